/** Lower-case hex: how a hash is shown, sent back and written into the audit log. */
export const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString("hex");
