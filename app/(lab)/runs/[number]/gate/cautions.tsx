import { Notice } from "@/app/_ui/notice";
import { cautionsDefer, hotWorkCautions } from "@/lib/domain/gate/cautions";

/** What a person reads before the furnace is hot. It defers to local rules, the makers' manuals and licensed trades. */
export function Cautions() {
  return (
    <Notice kind="danger" title="Danger: hot work">
      <dl>
        {hotWorkCautions.map(({ title, text }) => (
          <div key={title}>
            <dt>
              <strong>{title}</strong>
            </dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <p>{cautionsDefer}</p>
    </Notice>
  );
}
