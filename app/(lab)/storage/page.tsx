import Link from "next/link";
import { Disclosure } from "@/app/_ui/disclosure";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { type StorageView, storageView } from "@/lib/views/custody/storage";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { KeptTable } from "./kept-table";
import { MoveForm } from "./move-form";
import { ChangePlaceForm, RecordPlaceForm, RetentionForm } from "./place-forms";

export const metadata = { title: "Storage" };

type PlaceProps = { readonly place: StorageView["places"][number]; readonly mayConfigure: boolean };

const Place = ({ place, mayConfigure }: PlaceProps) => (
  <article className="stack">
    <h3>
      {place.code} {place.name}
    </h3>
    <p className="quiet">
      {[place.conditions, place.active ? "" : "no longer used"].filter(Boolean).join("; ") ||
        "No conditions stated"}
    </p>
    {place.tags.length === 0 ? (
      <p className="quiet">Empty.</p>
    ) : (
      <p>
        {place.tags.map((tag) => (
          <span key={tag}>
            <Link href={`/sensors/${tag}`}>{tag}</Link>{" "}
          </span>
        ))}
      </p>
    )}
    {mayConfigure ? (
      <Disclosure summary={`Change ${place.code}`}>
        <ChangePlaceForm place={place} />
      </Disclosure>
    ) : null}
  </article>
);

export default async function StoragePage() {
  const actor = await requireStaff();
  const storage = await load(storageView(actor, new Date()));
  const { places, retention, keptCount, kept, mayMove, mayConfigure } = storage;
  return (
    <Page title="Storage" lead="Where sensors wait, and which have waited too long to be handed back.">
      {mayMove ? (
        <Section title="Move sensors">
          <MoveForm places={places.filter(({ active }) => active)} />
        </Section>
      ) : null}
      <Section
        title="Kept too long"
        note={`More than ${retention.days} days after they could go back${
          keptCount > kept.length ? `; the first ${kept.length} of ${keptCount}` : ""
        }.`}
        wide
      >
        <KeptTable storage={storage} />
        {mayConfigure ? (
          <Disclosure summary="Change how long">
            <RetentionForm retention={retention} />
          </Disclosure>
        ) : null}
      </Section>
      <Section title="Places">
        {places.length === 0 ? (
          <EmptyState title="No storage places yet">
            Record shelves, drawers and cabinets with a code for their labels.
          </EmptyState>
        ) : (
          places.map((place) => <Place key={place.id} place={place} mayConfigure={mayConfigure} />)
        )}
        {mayConfigure ? (
          <Disclosure summary="Record a storage place">
            <RecordPlaceForm />
          </Disclosure>
        ) : null}
      </Section>
    </Page>
  );
}
