using System.Runtime.InteropServices.JavaScript;
using Dyepath.Client;
using Dyepath.Client.Draft;
using Dyepath.Client.Making.Beside;
using Dyepath.Client.Making.Handing;
using Dyepath.Client.Making.Store;
using Dyepath.Client.Pattern;
using Dyepath.Client.Shelf;
using Dyepath.Client.Shell;
using Dyepath.Client.Store;
using Dyepath.Client.Work;
using Dyepath.Client.Worker;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Shelf;
using Dyepath.Workspace.Shell;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.RootComponents.Add<HeadOutlet>("head::after");
builder.Services.AddSingleton(new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress) });
builder.Services.AddSingleton<Faults>();
builder.Services.AddSingleton<Planner>();
builder.Services.AddSingleton<Workbench>();
builder.Services.AddSingleton<ShownGarment>();
builder.Services.AddSingleton(services => new RepertoireDrawings(services.GetRequiredService<IJobs>()) { Pause = TimeSpan.FromSeconds(1) });
builder.Services.AddSingleton<ServerShelf>();
builder.Services.AddSingleton<IDeviceEvents, DeviceStore>();
builder.Services.AddSingleton<IDeviceShelf, DeviceShelf>();
builder.Services.AddSingleton<Keeper>();
builder.Services.AddSingleton<ProjectShelf>();
builder.Services.AddSingleton<IMakingShelf, MakingShelf>();
builder.Services.AddSingleton<MakingHost>();
builder.Services.AddSingleton<MakingKeeper>();
builder.Services.AddSingleton<PieceShelf>();
builder.Services.AddSingleton<HandedShelf>();
builder.Services.AddSingleton<Jobs>().AddSingleton<IJobs>(services => services.GetRequiredService<Jobs>());
builder.Services.AddSingleton<NewVersion>();
builder.Services.AddSingleton<IDevice, Device>();
builder.Services.AddSingleton<IRaster, Raster>();
builder.Services.AddSingleton<BookletFiles>();
(string Module, string File)[] modules =
[
    (Page.Module, "page"), (DeviceStore.Module, "store"), (Canvas.Module, "canvas"), (Device.Module, "beside"), (BookletView.Module, "booklet"), (PhotoIntake.Module, "photo"),
    (NewVersion.Module, "versions"),
];
foreach (var (module, file) in modules)
    await JSHost.ImportAsync(module, $"../js/{file}.js");
var program = builder.Build();
program.Services.GetRequiredService<NewVersion>().Begin();
await program.RunAsync();
