// Runs jobs in a second runtime, each in a worker of its own; one that has finished waits for the next job.
import { ownEngine } from './versions.js';

const runtime = new URL('../_framework/dotnet.js', import.meta.url).href;
const most = 2;
// A job that takes this long may be stopped for the next one, which should not wait for a runtime to open.
const long = 1000;
const running = new Map();
const results = new Map();
const idle = [];
let blocked = false;

function open() {
  const worker = new Worker(new URL('worker.js', import.meta.url), { type: 'module' });
  worker.postMessage({ runtime });
  return worker;
}

function spare() {
  if (blocked || idle.length > 0) return;
  try {
    const worker = open();
    worker.onerror = event => {
      event.preventDefault();
      idle.splice(idle.indexOf(worker), 1);
    };
    worker.onmessage = ({ data }) => { worker.isOpen ||= data.open; };
    idle.push(worker);
  } catch {
    blocked = true;
  }
}

export function warm() {
  if (running.size === 0) spare();
}

// Resolves with nothing when the job is done, or else with what kept it from being done.
export function start(id, job, input, progress, assemblies) {
  return new Promise(resolve => {
    let worker;
    try {
      worker = idle.pop() ?? open();
    } catch {
      blocked = true;
      return resolve('no worker');
    }
    const second = setTimeout(spare, long);
    const end = fault => {
      clearTimeout(second);
      running.delete(id);
      if (fault || idle.length >= most) worker.terminate();
      else idle.push(worker);
      resolve(fault ?? '');
    };
    running.set(id, end);
    worker.onerror = event => {
      event.preventDefault();
      end(worker.isOpen ? event.message || 'The worker failed.' : 'no worker');
    };
    worker.onmessage = ({ data }) => {
      if (data.open) return void (worker.isOpen = true);
      if (data.share !== undefined) return progress(data.share);
      if (data.result) results.set(id, data.result);
      end(data.result ? undefined : data.closed ? 'no worker' : data.fault || 'The worker failed.');
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
