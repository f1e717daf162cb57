// Runs jobs in a second runtime, each in a worker of its own; one that has finished waits for the next job.
import { ownEngine } from './versions.js';

const runtime = new URL('../_framework/dotnet.js', import.meta.url).href;
const running = new Map();
const results = new Map();
let idle = null;

export function start(id, job, input, progress, assemblies) {
  return new Promise((resolve, reject) => {
    const worker = idle ?? new Worker(new URL('worker.js', import.meta.url), { type: 'module' });
    idle = null;
    const end = fault => {
      running.delete(id);
      if (fault || idle) worker.terminate();
      else idle = worker;
      if (fault) reject(new Error(fault));
      else resolve();
    };
    running.set(id, end);
    worker.onerror = event => end(event.message || 'The worker could not be opened.');
    worker.onmessage = ({ data }) => {
      if (data.share !== undefined) return progress(data.share);
      if (data.result) results.set(id, data.result);
      end(data.fault);
    };
    worker.postMessage({ runtime, engine: ownEngine(), job, input, assemblies });
  });
}

export function take(id) {
  const result = results.get(id);
  results.delete(id);
  return result;
}

export function stop(id) {
  running.get(id)?.('Stopped.');
}
