import { Notice } from "@/app/_ui/notice";

type Carried = { readonly number: string; readonly terms: string; readonly lines: readonly string[] };

/** What comes along from the order that is asked for once more, since the form below cannot say it. */
export function CarriedOver({ carried }: { readonly carried: Carried | null }) {
  if (!carried) return null;
  return (
    <Notice kind="info" title="What is carried over">
      <p>{carried.terms}</p>
      {carried.lines.length > 0 ? (
        <ul className="plain-list">
          {carried.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      ) : null}
      <p className="quiet">
        Sensors you describe anew below, or want at other temperatures, keep the rule set and the decision
        rule alone.
      </p>
    </Notice>
  );
}
