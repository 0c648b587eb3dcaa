// Runs before the first paint: a theme chosen on this device wins over the one the system asks for.
try {
  const theme = localStorage.getItem("theme");
  if (theme === "light" || theme === "dark") document.documentElement.dataset.theme = theme;
} catch {
  // Storage may be closed; then the system's theme stands.
}
