import type { EvidenceFinding } from "../evaluation";
import type { FindingInput } from "./finding-input";

/** What a person must look at, gravest first. None of it stops the evaluation. */
export function findings(_input: FindingInput): EvidenceFinding[] {
  return [];
}
