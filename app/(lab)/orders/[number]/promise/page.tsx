import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Button } from "@/app/_ui/button";
import { DateField } from "@/app/_ui/date-field.client";
import { FurnaceQueue } from "@/app/_ui/drawing/furnace-queue";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { furnaceQueueView } from "@/lib/views/promise/furnace-queue";
import { orderPromiseView } from "@/lib/views/promise/order-promise";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { givePromiseAction } from "./actions";
import { Proposal } from "./proposal";

export const metadata = { title: "Promise a day" };

type Props = {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<{ readonly arrives?: string | string[] }>;
};

/** A day from the address; anything else is none. */
const dayOf = (typed: string | string[] | undefined): string | null =>
  typeof typed === "string" && /^\d{4}-\d{2}-\d{2}$/.test(typed) && !Number.isNaN(Date.parse(typed))
    ? typed
    : null;

export default async function PromisePage({ params, searchParams }: Props) {
  const actor = await requireStaff();
  const now = new Date();
  const arrives = dayOf((await searchParams).arrives);
  const view = await load(orderPromiseView(actor, (await params).number, arrives, now));
  const here = `/orders/${view.number}/promise`;
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: view.number, href: `/orders/${view.number}` },
  ];
  const proposed = view.proposal.kind === "proposed" ? view.proposal.promisedOn : "";
  return (
    <Page
      title={`Promise a day for ${view.number}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead={
        view.promisedOn
          ? `Promised for ${view.promisedOn}. Promising again gives its furnace hours back first.`
          : "Nothing is promised yet."
      }
    >
      <Section title="What the furnaces allow" note={view.isExpress ? "Express." : undefined}>
        <form className="form-inline" action={here} aria-label="When the sensors come">
          <DateField
            name="arrives"
            label="Sensors come on"
            optional
            {...(arrives ? { defaultValue: arrives } : {})}
          />
          <Button type="submit" kind="quiet">
            Reckon
          </Button>
        </form>
        <Proposal view={view} />
      </Section>
      {view.mayPromise ? (
        <Section title="The promise">
          <ActionForm
            action={givePromiseAction}
            label="Promise a day"
            permalink={arrives ? `${here}?arrives=${arrives}` : here}
          >
            <input type="hidden" name="number" value={view.number} />
            <input type="hidden" name="arrivesOn" value={view.arrivesOn} />
            <input type="hidden" name="shown" value={view.shown} />
            <DateField name="promisedOn" label="Promised for" defaultValue={proposed} />
            <TextField name="reason" label="Why it is another day" optional maxLength={400} />
            <div className="form-actions">
              <SubmitButton>Promise it and take the hours</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      ) : null}
      <Section title="Furnaces" wide>
        <FurnaceQueue view={await load(furnaceQueueView(actor, now))} />
      </Section>
    </Page>
  );
}
