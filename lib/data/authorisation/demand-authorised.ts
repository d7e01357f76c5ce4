import type { Activity, Authorisation } from "@/lib/domain/authorisation/authorisation";
import { type Asked, decideAuthorised } from "@/lib/domain/authorisation/decide-authorised";
import type { BundleMember } from "@/lib/domain/certificate/bundle";
import { demand } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { loadAuthorisations, proceduresOfRuns } from "./authorisation-store";

type Measured = { readonly members: readonly BundleMember[] };

/** What one certificate asks for: the types, range and scope of every result on it, and the procedures they followed. */
const askedBy = async (tx: Tx, activity: Activity, { members }: Measured): Promise<Asked> => {
  const measured = members.flatMap(({ parts }) =>
    parts.points.flatMap((point) => (point.state === "measured" ? [point] : [])),
  );
  return {
    activity,
    subject: [...new Set(members.map(({ parts }) => parts.sensor.tag))].join(", "),
    typeLetters: [...new Set(members.map(({ parts }) => parts.sensor.typeLetter))],
    nominalCelsius: measured.map(({ nominalCelsius }) => nominalCelsius),
    hasOutsideScope: measured.some(({ scope }) => scope.state === "outside"),
    procedureIds: await proceduresOfRuns(
      tx,
      members.map(({ runId }) => runId),
    ),
  };
};

/** The authorisation by which this person answers for all of a certificate at this moment, or the refusal. */
export const demandAuthorised = async (
  tx: Tx,
  personId: string,
  bundle: Measured,
  at: Date,
  activity: Activity = "sign-off",
): Promise<Authorisation> =>
  demand(decideAuthorised(await loadAuthorisations(tx, personId), await askedBy(tx, activity, bundle), at));
