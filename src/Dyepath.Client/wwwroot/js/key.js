// The key of a handed-over piece leaves the address before anything else runs that could keep or tell the address. It waits here
// for the page that opens the piece: as long as the window is open, and through one loading anew.
if (location.pathname.endsWith('/make/from') && location.hash.length > 1) {
  sessionStorage.setItem('dyepath.key', location.hash.slice(1));
  history.replaceState(null, '', location.pathname + location.search);
}
