// The booklet in a frame that runs no script: the page writes into it, part by part, so that what has not changed stays where it is.
const frames = new WeakMap();

export async function show(id, html) {
  const frame = document.getElementById(id);
  if (!frame) return;
  let known = frames.get(frame);
  if (!known) {
    known = { loaded: new Promise(done => frame.addEventListener('load', done, { once: true })), last: html };
    frames.set(frame, known);
    frame.srcdoc = html;
    await known.loaded;
    known.dark = darkRule(frame.contentDocument);
    frame.contentDocument.addEventListener('click', follow);
    paint(frame, known);
    const device = matchMedia('(prefers-color-scheme: dark)');
    const repaint = () => {
      if (frame.isConnected) return paint(frame, known);
      watch.disconnect();
      device.removeEventListener('change', repaint);
    };
    const watch = new MutationObserver(repaint);
    watch.observe(document.documentElement, { attributeFilter: ['data-theme'] });
    device.addEventListener('change', repaint);
  } else {
    await known.loaded;
    if (known.last !== html) renew(frame.contentDocument, new DOMParser().parseFromString(changed(known.last, html), 'text/html'));
    known.last = html;
  }
}

export function go(id, section) {
  const page = document.getElementById(id)?.contentDocument;
  const target = section ? page?.getElementById(section) : page?.body;
  if (!target) return false;
  // Within the frame alone: the page around it stays.
  page.defaultView.scrollTo({ top: target.getBoundingClientRect().top + page.defaultView.scrollY - 8 });
  return true;
}

// The booklet follows the reader's device; here it follows the page around it, which may have been told otherwise.
function darkRule(page) {
  return [...page.styleSheets].flatMap(sheet => [...sheet.cssRules]).find(rule => rule.media?.mediaText.includes('prefers-color-scheme: dark'));
}

function paint(frame, known) {
  const root = frame.contentDocument?.documentElement;
  if (!root || !known.dark) return;
  const chosen = document.documentElement.dataset.theme;
  const dark = chosen ? chosen === 'dark' : matchMedia('(prefers-color-scheme: dark)').matches;
  known.dark.media.mediaText = dark ? 'screen' : 'not all';
  root.style.colorScheme = dark ? 'dark' : 'light';
}

// A link inside the booklet would otherwise be taken for an address of the page around it.
function follow(event) {
  const link = event.target.closest?.('a[href^="#"]');
  if (!link) return;
  event.preventDefault();
  link.ownerDocument.getElementById(link.getAttribute('href').slice(1))?.scrollIntoView();
}

// Sections that are the same to the letter are not read again: of each only its name is left.
function changed(last, html) {
  const before = new Set(sections(last));
  const kept = new Set(sections(html).filter(section => before.has(section)));
  return kept.size === 0 ? html : html.split(between).map(section => kept.has(section) ? `<section id="${named.exec(section)[1]}" data-kept></section>\n` : section).join('');
}

const named = /^<section id="([^"]*)"/;
const between = /^(?=<section id=)|(?<=^<\/section>\n)/m;
const sections = html => html.split(between).filter(part => named.test(part));

function renew(old, fresh) {
  old.title = fresh.title;
  old.documentElement.lang = fresh.documentElement.lang;
  // The rules of the choice of a size are a sheet of their own; a size that is chosen stays so.
  const [rules, next] = [old, fresh].map(page => page.head.querySelector('style:last-of-type'));
  if (rules.textContent !== next.textContent) rules.textContent = next.textContent;
  const chosen = old.querySelector('.choice input:checked')?.id;
  for (const part of ['header', 'nav', 'main'])
    parts(old.querySelector(`.page > ${part}`), fresh.querySelector(`.page > ${part}`), part === 'main');
  const button = chosen && old.getElementById(chosen);
  if (button) button.checked = true;
}

function parts(old, fresh, deeper) {
  if (!deeper) {
    if (!old.isEqualNode(fresh)) old.replaceWith(old.ownerDocument.adoptNode(fresh));
    return;
  }
  const kept = new Map([...old.children].map(section => [section.id, section]));
  const wanted = [...fresh.children];
  const names = new Set(wanted.map(section => section.id));
  for (const [id, section] of kept) if (!names.has(id)) section.remove();
  wanted.forEach((section, at) => {
    const same = kept.get(section.id);
    if (same && ('kept' in section.dataset || same.isEqualNode(section))) {
      if (old.children[at] !== same) old.insertBefore(same, old.children[at] ?? null);
    } else if (same) {
      const scrolled = [...same.querySelectorAll('.scroll, .table')].map(box => [box.scrollLeft, box.scrollTop]);
      const next = old.ownerDocument.adoptNode(section);
      same.replaceWith(next);
      [...next.querySelectorAll('.scroll, .table')].forEach((box, i) => {
        if (scrolled[i]) [box.scrollLeft, box.scrollTop] = scrolled[i];
      });
    } else {
      old.insertBefore(old.ownerDocument.adoptNode(section), old.children[at] ?? null);
    }
  });
}
