// Before anything is painted, so that a dark page never flashes light.
const theme = localStorage.getItem('dyepath.theme');
if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
