/**
 * A kept message without what opens an account: whoever reads the mail of others would otherwise come in as them. The
 * message itself is as it was sent.
 */
export const maskAccess = (body: string): string =>
  body.replace(/(\/(?:invitation|reset)\/)[\w-]{43}/g, "$1[kept from view]");
