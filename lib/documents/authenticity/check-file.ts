import type { KeyList } from "@/lib/domain/seal/key-list";
import type { FileVerdict } from "./verdict";

export type Given = {
  readonly keys: KeyList;
  readonly now: Date;
  /** Of the content that the document should carry, hex: what stands after # in the address of its QR code. */
  readonly contentHash?: string;
};

export type CheckFile = (bytes: Uint8Array, given: Given) => Promise<FileVerdict>;
