import { begin, mend, started } from './versions.js';

// Blazor tells of a start that failed by showing this alone.
const alarm = document.getElementById('blazor-error-ui');
let watching;
const broken = new Promise((_, reject) => {
  watching = new MutationObserver(() => reject(new Error('The program did not start.')));
  watching.observe(alarm, { attributes: true });
});

try {
  if (!await begin()) await Promise.race([Promise.all([Blazor.start(), started]), broken]);
} catch (fault) {
  console.error(fault);
  if (await mend()) location.reload();
  else say();
}
watching.disconnect();

// In place of the opening words; without the program there is nothing else to say it.
function say() {
  const box = document.querySelector('#app > .opening');
  if (!box) return;
  box.classList.add('failed');
  box.querySelector('.later a').href = location.href;
  alarm.remove();
}
