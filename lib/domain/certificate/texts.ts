import { type Message, say, sayAll } from "./catalogue/message";
import { english } from "./catalogue/settle";

/** The sentences of a certificate that are not a figure or a name, as messages: their words stand in the catalogue. */

export const title = say("title");

/** `source`: where the reference functions of the points stand, from `referenceSource`. */
export const method = (source: Message | string) => ({
  name: say("method.name"),
  description: say("method.description", { source }),
});

export const scale = say("condition.scale");
export const referenceFunction = (source: Message | string): Message =>
  say("condition.reference-function", { source });

/** 7.8.4.1 c. `uncalibrated` names instruments that stand on stated limits instead of a certificate of their own. */
export const traceabilityStatement = (uncalibrated: readonly string[]): Message =>
  sayAll([
    say("traceability"),
    ...(uncalibrated.length === 0
      ? []
      : [say("traceability.uncalibrated", { tags: uncalibrated.join(", ") })]),
  ]);

/** Beside a result that lies outside the laboratory's accredited scope, on paper and on screen. */
export const outsideScopeSign = "†";
export const allInScope = say("scope.all-inside");
export const someOutsideScope = english(say("scope.some-outside"));
export const allOutsideScope = say("scope.all-outside");

export const adjustment = say("adjustment.none");
export const sampling = say("sampling.none");
export const externalResults = say("external.none");

export const statements = [say("relates.as-received"), say("reproduce"), say("no-interval")] as const;

export const demonstration = say("demonstration");

export const performerSignedOff = english(say("performer-signed-off"));
