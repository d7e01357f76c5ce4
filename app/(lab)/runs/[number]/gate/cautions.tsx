import { Notice } from "@/app/_ui/notice";
import { cautionsDefer, hotWorkCautions } from "@/lib/domain/gate/cautions";
import css from "./gate.module.css";

/** What a person reads before the furnace is hot. It defers to local rules, the makers' manuals and licensed trades. */
export function Cautions() {
  return (
    <Notice kind="danger" title="Danger: hot work">
      <dl className={css.cautions}>
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
