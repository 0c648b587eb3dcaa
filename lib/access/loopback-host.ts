const LOOPBACK_HOST = /^(localhost|127\.0\.0\.1|\[::1\])(:\d{1,5})?$/i;

/** Whether the Host header of a request names this machine itself. A request without one is refused too. */
export function isLoopbackHost(host: string | null): boolean {
  return host !== null && LOOPBACK_HOST.test(host);
}

/**
 * Whether a request that changes something comes from a page of our own. Browsers name the page's origin; programs that
 * are no browser name none.
 */
export function isLoopbackOrigin(origin: string | null): boolean {
  return origin === null || (/^https?:\/\//.test(origin) && isLoopbackHost(origin.replace(/^https?:\/\//, "")));
}
