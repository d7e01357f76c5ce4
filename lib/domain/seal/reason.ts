import { z } from "zod";
import { seenWhole } from "../typed-text";

/** Of an ending: published with the list, so that whoever checks a document reads why. */
export const Reason = z
  .string()
  .trim()
  .min(1, "Say why: it is published with the list of keys.")
  .max(300, "At most 300 signs.")
  .superRefine(seenWhole);
