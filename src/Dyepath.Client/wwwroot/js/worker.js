// A second runtime: does one job after another, as the page asks. The page gives the runtime's address, first without a job.
self.dotnetSidecar = true;
let runner = null;

self.onmessage = async ({ data: { runtime, engine, job, input, assemblies } }) => {
  let isOpen = false;
  try {
    runner ??= open(runtime);
    const { run, load } = await runner;
    isOpen = true;
    self.postMessage({ open: true });
    if (!job) return;
    for (const assembly of assemblies) await load(assembly);
    const result = run(engine, job, input);
    self.postMessage({ result }, [result.buffer]);
  } catch (error) {
    // The next job may try again to open it.
    if (!isOpen) runner = null;
    if (job) self.postMessage({ fault: String(error?.message ?? error), closed: !isOpen });
  }
};

async function open(address) {
  const { dotnet } = await import(address);
  const { getAssemblyExports, setModuleImports, INTERNAL } = await dotnet.create();
  setModuleImports('dyepath/worker', { progress: share => self.postMessage({ share }) });
  const exports = await getAssemblyExports('Dyepath.Client');
  const loaded = new Set();
  const load = async assembly => {
    if (!loaded.has(assembly)) await INTERNAL.loadLazyAssembly(assembly);
    loaded.add(assembly);
  };
  return { run: exports.Dyepath.Client.Worker.JobEntry.Run, load };
}
