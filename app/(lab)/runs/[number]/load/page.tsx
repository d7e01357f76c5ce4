import { FurnaceLoad } from "@/app/_ui/drawing/furnace-load";
import { FieldList } from "@/app/_ui/field-list";
import { Section } from "@/app/_ui/section";
import { runLoadView } from "@/lib/views/run/run-load";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RunPage } from "../run-page";
import { AbandonRun } from "./abandon-run";
import { LoadTable } from "./load-table";
import { Repeats } from "./repeats";
import { StandardList } from "./standard-list";
import { TipCheckForm } from "./tip-check-form";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({ title: `Load of ${(await params).number}` });

export default async function RunLoadPage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(runLoadView(actor, (await params).number));
  return (
    <RunPage head={view.head} at="load">
      {view.head.mayWork ? (
        <Section
          title="Warm each tip"
          note="Before the furnace is hot: warm one tip by hand; its channel rises by 20 µV or more, and no other does."
        >
          <TipCheckForm view={view} />
        </Section>
      ) : null}
      <Repeats view={view} />
      <Section title="Furnace load" wide>
        <FurnaceLoad
          view={{
            title: `Load of run ${view.head.number}`,
            configuration: view.configurationKind,
            ...view.furnace,
            places: view.places.map((place) => ({
              place: place.place,
              kind: place.kind,
              label: place.serial || "shorted",
              type: place.type ?? undefined,
              channel: place.channel,
              junction: place.junction,
              immersionMillimetre: place.immersionMillimetre ?? undefined,
            })),
          }}
        />
        <LoadTable view={view} />
      </Section>
      <Section title="Characterisation">
        <FieldList
          items={[
            { label: "Valid until", value: view.characterisation.validUntil ?? "not stated" },
            { label: "Statement", value: view.characterisation.statement },
          ]}
        />
      </Section>
      <StandardList standards={view.standards} />
      <AbandonRun head={view.head} />
    </RunPage>
  );
}
