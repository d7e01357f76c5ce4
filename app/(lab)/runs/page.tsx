import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { may } from "@/lib/domain/staff/permissions";
import { runsView } from "@/lib/views/run/runs";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RunTable } from "./run-table";

export const metadata = { title: "Runs" };

export default async function RunsPage() {
  const actor = await requireStaff();
  const { runs, waiting } = await load(runsView(actor));
  const create = may(actor.roles, "run.perform") ? (
    <LinkButton href="/runs/new" kind="primary">
      Plan a run
    </LinkButton>
  ) : null;
  const lead = `${waiting} received sensor${waiting === 1 ? " waits" : "s wait"} for a furnace.`;
  return (
    <Page title="Runs" actions={create} lead={lead}>
      <RunTable runs={runs} />
    </Page>
  );
}
