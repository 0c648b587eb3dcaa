/** The server gets nothing of our environment but the search path: no secrets, no locale, no time zone. */
export function serverEnvironment(): NodeJS.ProcessEnv {
  return { PATH: process.env.PATH, TZ: "UTC", NODE_ENV: process.env.NODE_ENV };
}
