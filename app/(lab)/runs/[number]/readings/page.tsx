import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import { runReadingsView } from "@/lib/views/run/run-readings";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RoomSection } from "../room/room-section";
import { RunPage } from "../run-page";
import { BlockTable } from "./block-table";
import { TakeIn } from "./take-in";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({
  title: `Readings of ${(await params).number}`,
});

export default async function RunReadingsPage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(runReadingsView(actor, (await params).number));
  const { head, blocks } = view;
  const exportLink =
    head.mayExport && blocks.length > 0 ? (
      <LinkButton href={`/api/runs/${head.number}/evidence`} download>
        Export the evidence
      </LinkButton>
    ) : null;
  return (
    <RunPage head={head} at="readings" actions={exportLink}>
      {head.mayWork ? <TakeIn view={view} /> : null}
      <RoomSection actor={actor} number={head.number} />
      <Section title="What came in" wide>
        <BlockTable blocks={blocks} />
      </Section>
    </RunPage>
  );
}
