import { Timestamp } from "@/app/_ui/timestamp";

type Paper = {
  readonly id: string;
  readonly title: string;
  readonly number: string;
  readonly madeAt: string;
};

/** The papers of an order as they left, the newest first. */
export function PaperList({ papers }: { readonly papers: readonly Paper[] }) {
  if (papers.length === 0) return <p className="quiet">No paper has left yet.</p>;
  return (
    <ul className="list">
      {papers.map((paper) => (
        <li key={paper.id}>
          <a href={`/api/order-documents/${paper.id}`} download>
            {paper.title} {paper.number}
          </a>
          , <Timestamp at={paper.madeAt} />
        </li>
      ))}
    </ul>
  );
}
