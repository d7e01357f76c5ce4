import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import type { Actor } from "@/lib/domain/staff/actor";
import { orderHoldsView, sensorHoldsView } from "@/lib/views/hold/holds-on";
import { load } from "@/lib/web/load";
import { PlaceHoldForm } from "./hold-forms";
import { HoldItem } from "./hold-item";

type Props = { readonly actor: Actor } & ({ readonly tag: string } | { readonly order: string });

/** What stands still of a sensor or an order: one line on its page. Shows nothing where nothing can be said. */
export async function HoldSection(props: Props) {
  const { actor } = props;
  const on = await load(
    "tag" in props ? sensorHoldsView(actor, props.tag) : orderHoldsView(actor, props.order),
  );
  const mayBegin = on.mayPlace && on.canBegin;
  if (on.holds.length === 0 && !mayBegin) return null;
  return (
    <Section title="Holds and questions" id="holds">
      {on.holds.map((hold) => (
        <HoldItem
          key={hold.id}
          hold={hold}
          mayPlace={on.mayPlace}
          mayRelease={on.mayRelease}
          mayDispose={on.mayDispose}
        />
      ))}
      {mayBegin ? (
        <Disclosure summary={on.tag === "" ? "Put the whole order on hold" : "Put this sensor on hold"}>
          <PlaceHoldForm orderNumber={on.orderNumber} tag={on.tag} />
        </Disclosure>
      ) : null}
    </Section>
  );
}
