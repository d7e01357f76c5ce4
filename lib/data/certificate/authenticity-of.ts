import { documentUrl } from "../public-url";

/** Where anyone can check it; a process that people do not reach knows no address. */
export const authenticityOf = (token: string): { readonly authenticity?: { readonly address: string } } => {
  const origin = documentUrl();
  return origin === null ? {} : { authenticity: { address: new URL(`/authenticity/${token}`, origin).href } };
};
