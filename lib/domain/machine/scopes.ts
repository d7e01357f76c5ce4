/** What a program's token opens. A program never signs, agrees or invites: those are acts of people. */
export const tokenScopes = ["orders:read", "orders:write", "certificates:read"] as const;
export type TokenScope = (typeof tokenScopes)[number];

export const tokenScopeLabels: Readonly<Record<TokenScope, string>> = {
  "orders:read": "Read orders and where each sensor is",
  "orders:write": "Request work",
  "certificates:read": "Read certificates, as data and as PDF",
};

/** How many requests a token has a minute, and how many unknown tokens an address may try. */
export const requestsPerMinute = 120;
export const unknownTokensPerMinute = 30;
