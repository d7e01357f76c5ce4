/** Set by `proxy.ts` on the request itself (a value sent from outside is overwritten): where the person wanted to go. */
export const requestPathHeader = "x-emfolio-path";
