// A second runtime: does one job after another, as the page asks. The page gives the runtime's address.
self.dotnetSidecar = true;
let runner = null;

self.onmessage = async ({ data: { runtime, job, input } }) => {
  try {
    runner ??= open(runtime);
    const result = (await runner)(job, input);
    self.postMessage({ result }, [result.buffer]);
  } catch (error) {
    self.postMessage({ fault: String(error?.message ?? error) });
  }
};

async function open(address) {
  const { dotnet } = await import(address);
  const { getAssemblyExports, setModuleImports } = await dotnet.create();
  setModuleImports('dyepath/worker', { progress: share => self.postMessage({ share }) });
  const exports = await getAssemblyExports('Dyepath.Client');
  return exports.Dyepath.Client.Worker.JobRunner.Run;
}
