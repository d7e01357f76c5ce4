import type { KeyFolder } from "@/lib/documents/seal/key-folder";

/** Keys of no installation: made in the folder as they are first used, with the laboratory's own timestamp authority. */
export const testKeys = (folder: string, rest: Partial<KeyFolder> = {}): KeyFolder => ({
  ...{ folder, passphrase: "only for tests", given: undefined, timestampUrl: undefined },
  ...rest,
});
