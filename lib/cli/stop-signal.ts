/** Aborted when the process is asked to stop; a second time ends it at once. */
export function stopSignal(): AbortController {
  const controller = new AbortController();
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.once(name, () => controller.abort());
  return controller;
}
