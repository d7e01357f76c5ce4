import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Thread } from "@/app/_ui/thread";
import {
  nonconformityKindLabels,
  nonconformityStateLabels,
  nonconformityStates,
  subjectKindLabels,
} from "@/lib/domain/nonconformity/labels";
import { nonconformityView, type NonconformityPage as View } from "@/lib/views/nonconformity/nonconformity";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { HoldItem } from "../../holds/hold-item";
import { NonconformityMark } from "../nonconformity-mark";
import { Steps } from "./steps";
import { Story } from "./story";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({ title: (await params).number });

const pageOf = ({ subjectKind, subjectName, subjectId }: View): string | null => {
  if (subjectKind === "equipment" || subjectKind === "calibration")
    return subjectKind === "equipment" ? `/standards/${subjectId}` : null;
  if (subjectKind === "customer") return `/customers/${subjectId}`;
  return subjectKind === "laboratory" ? null : `/${subjectKind}s/${subjectName}`;
};

const beads = ({ state }: View) =>
  nonconformityStates.map((one) => {
    const at = nonconformityStates.indexOf(state);
    const own = nonconformityStates.indexOf(one);
    const isPast = own < at || state === "closed";
    return {
      label: nonconformityStateLabels[one],
      state: isPast ? ("done" as const) : own === at ? ("now" as const) : ("next" as const),
    };
  });

export default async function NonconformityPage({ params }: Props) {
  const actor = await requireStaff();
  const page = await load(nonconformityView(actor, (await params).number));
  const href = pageOf(page);
  const subject = `${subjectKindLabels[page.subjectKind]} ${page.subjectName}`;
  return (
    <Page
      title={`${page.number} ${page.title}`}
      crumbs={<Breadcrumb trail={[{ label: "Quality", href: "/quality" }]} />}
      state={<NonconformityMark state={page.state} />}
      lead={
        <>
          {nonconformityKindLabels[page.kind]}
          {page.customer ? ` of ${page.customer}` : ""}, found on{" "}
          {href ? <Link href={href}>{subject}</Link> : subject}
        </>
      }
      thread={<Thread label={`Thread of ${page.number}`} beads={beads(page)} ofStates />}
    >
      <Steps page={page} />
      {page.holds.length === 0 ? null : (
        <Section title="Stands still for it">
          {page.holds.map((hold) => (
            <HoldItem key={hold.id} hold={hold} mayPlace={false} mayRelease={false} />
          ))}
        </Section>
      )}
      <Story page={page} />
    </Page>
  );
}
