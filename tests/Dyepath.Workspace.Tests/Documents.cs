using System.Text;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Workspace.Tests;

internal static class Documents
{
    /// <summary>The demo as it is edited, laid out as after an edit, so that texts compare.</summary>
    public static ProjectDocument Demo()
    {
        var document = ProjectDocument.TryParse(Encoding.UTF8.GetString(DemoProject.Utf8))!;
        document.Set("title", "Tideline");
        return document;
    }

    /// <summary>A workbench that plans where it is called, or as the jobs do.</summary>
    public static Workbench Workbench(IJobs? jobs = null)
    {
        var faults = new Faults();
        return new Workbench(new Planner(jobs ?? new JobsHere(), faults), faults);
    }

    /// <summary>What every page asks for.</summary>
    public static void AddWork(this IServiceCollection services, Workbench workbench, IJobs? jobs = null) => services
        .AddSingleton<Faults>().AddSingleton<Planner>().AddSingleton(jobs ?? new JobsHere()).AddSingleton(workbench).AddSingleton(Repertoire)
        .AddSingleton<ShownGarment>();

    /// <summary>What pages need that look at pieces under way: a host, a device that keeps them, and a phone.</summary>
    internal static void AddMaking(this IServiceCollection services, Workbench workbench, DeviceHere device, HostHere host, PhoneHere phone)
    {
        services.AddWork(workbench);
        services.AddSingleton(host.Client()).AddSingleton<ServerShelf>().AddSingleton<IDeviceShelf, NoShelf>().AddSingleton<Keeper>();
        var tab = device.Tab();
        services.AddSingleton<IMakingShelf>(tab).AddSingleton<IDeviceEvents>(tab).AddSingleton<MakingHost>().AddSingleton<MakingKeeper>()
            .AddSingleton<PieceShelf>().AddSingleton<HandedShelf>().AddSingleton<IDevice>(phone);
    }

    /// <summary>One for all pages: a drawing is the same whoever asks.</summary>
    private static readonly RepertoireDrawings Repertoire = new(new JobsHere());

    public static Workbench OpenDemo(Action<ProjectDocument>? change = null)
    {
        var document = Demo();
        change?.Invoke(document);
        var workbench = Workbench();
        Assert.True(workbench.Open(document.Text));
        return workbench;
    }
}
