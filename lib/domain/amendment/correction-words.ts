import { given, type Message, say } from "../certificate/catalogue/message";
import { english } from "../certificate/catalogue/settle";
import { protectionSaid } from "../certificate/compose-item";
import type { Corrections } from "./amendment";

/** In the catalogue's words, so that nobody takes a remark for an opinion of somebody authorised for them (7.8.7). */
export const remarkSaid = (remark: string): Message => say("amendment.remark", { text: given(remark) });

/** What the new certificate says, in English: a remark with its caption, a protection in its words. */
export const correctionWords = ({ protection, remark }: Corrections) => ({
  protection: protection === undefined ? undefined : english(protectionSaid(protection)),
  remark: remark === undefined ? undefined : english(remarkSaid(remark)),
});
