/** What a key of the programming interface may be for; each operation asks for exactly one. */
export const API_SCOPES = {
  calculate: "Calculate: methods, estimates, recomputation. Nothing is stored",
  "jobs:read": "Read jobs",
  "jobs:write": "Make and change jobs",
  "claims:read": "Read programs and claims",
  "claims:write": "Hand in claims and comment on them",
  "claims:decide": "Decide on claims received",
} as const;

export type ApiScope = keyof typeof API_SCOPES;

export const isApiScope = (text: string): text is ApiScope => Object.hasOwn(API_SCOPES, text);
