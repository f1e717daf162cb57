// Before anything is painted, so that a dark page never flashes light. A browser that keeps nothing may refuse even to look.
try {
  const theme = localStorage.getItem('dyepath.theme');
  if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
} catch { }
