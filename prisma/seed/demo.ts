import { configureDatabase } from "@/lib/data/client";
import { issuePending } from "@/lib/operations/certificate/issue-pending";
import type { Sealer } from "@/lib/operations/certificate/sealer";
import { tellAuxiliaries } from "./auxiliaries";
import { tellCommerce } from "./commerce";
import { tellCustomersSide } from "./customers-side";
import { tellFullRun, tellSubmission } from "./full-run";
import { tellHolds } from "./holds";
import { tellOrders } from "./orders";
import { type SignIn, tellPeople } from "./people";
import { tellProcedures } from "./procedures";
import { tellScope } from "./scope";
import { tellSignOff, versionOf } from "./sign-off";
import { tellStandards } from "./standards";
import { tellerAt } from "./teller";
import { tellWorkedExample } from "./worked-example";
import { tellWorkingStandard } from "./working-standard";

export type SeedOptions = {
  readonly databaseUrl: string;
  readonly seal: Sealer;
  readonly log: (line: string) => void;
};
/**
 * The demonstration laboratory: an invented scenario, told as a story by the operations people use. Secrets of one-time
 * codes are among it: `configureSeal` comes first.
 */
export const seedDemo = async ({
  databaseUrl,
  seal,
  log,
}: SeedOptions): Promise<{ signIns: readonly SignIn[] }> => {
  configureDatabase(databaseUrl);
  const teller = tellerAt(new Date());
  log("people and customers");
  const cast = await tellPeople(teller);
  log("furnace, references and instruments");
  const bench = await tellStandards(teller, cast);
  await tellAuxiliaries(teller, cast);
  log("procedures and scope");
  await tellProcedures(teller, cast);
  await tellScope(teller, cast);
  log("orders and sensors");
  const tags = await tellOrders(teller, cast);
  const run = await tellFullRun(teller, cast, bench, tags, log);
  await tellSubmission(teller, cast, run, await versionOf(run));
  log("sign-off and certificates");
  await tellSignOff(teller, cast, run);
  log("what the customers set up for themselves");
  await tellCustomersSide(teller, cast);
  log("the published worked example, ready to be run");
  await tellWorkedExample(teller, cast);
  log("a working standard calibrated in house");
  await tellWorkingStandard(teller, cast, bench);
  log("a hold, storage places, a complaint and a finding");
  await tellHolds(teller, cast);
  log("prices, offers, a promised day and a parcel");
  await tellCommerce(teller, cast);
  log("documents of the certificates");
  // Rendered and sealed now, not in the story: a seal tells the time it was made at.
  await issuePending(seal, () => new Date());
  return { signIns: cast.signIns };
};
