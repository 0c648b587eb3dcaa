/** Name of the cookie that holds a just issued proposal's link token. */
export const linkCookie = (jobId: string): string => `ductmend-link-${jobId}`;
