import { Disclosure } from "@/app/_ui/disclosure";
import { CustodyChart } from "@/app/_ui/drawing/custody-chart";
import { Section } from "@/app/_ui/section";
import type { Actor } from "@/lib/domain/staff/actor";
import { sensorCustodyView } from "@/lib/views/custody/sensor-custody";
import { load } from "@/lib/web/load";
import { DisposeForm } from "./dispose-form";
import { MoveForm } from "./move-form";

/** From hand to hand, drawn and as a table; one line on the sensor's page. */
export async function CustodySection({ actor, tag }: { readonly actor: Actor; readonly tag: string }) {
  const custody = await load(sensorCustodyView(actor, tag));
  return (
    <Section title="Custody" id="custody" note={custody.where ? `Now ${custody.where}.` : null}>
      {custody.steps.length === 0 ? (
        <p className="quiet">Taken in before the custody log was kept.</p>
      ) : (
        <CustodyChart view={{ title: `Custody of sensor ${tag}`, steps: custody.steps }} />
      )}
      {custody.mayMove ? (
        <Disclosure summary="Record where it went">
          <MoveForm tag={tag} places={custody.places} />
        </Disclosure>
      ) : null}
      {custody.mayDispose ? (
        <Disclosure summary="Dispose of it for the customer">
          <DisposeForm tag={tag} />
        </Disclosure>
      ) : null}
    </Section>
  );
}
