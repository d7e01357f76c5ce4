import { Text, View } from "@react-pdf/renderer";
import { changesSaid } from "./changes-said";
import type { OnPaper } from "./paper";
import { Say } from "./say";
import { styles } from "./styles";
import { together } from "./words";

/** 7.8.8: on page one, before anything else is read: which earlier document this one changes, why, and what. */
export const AmendmentNotice = ({ paper: { content, words } }: OnPaper) => {
  const { amends } = content;
  const changes = changesSaid(content, words);
  return amends ? (
    // Many long changes may be more than a page holds.
    <View style={styles.notice} wrap={changes.length > 0}>
      <Say
        said={words.caption(`amends.${amends.kind}`, { number: amends.number })}
        style={styles.blockTitle}
        lesser={{ fontSize: 9.5 }}
      />
      <Say
        said={together(" ", words.caption("reason"), words.sentence(amends.reason))}
        style={{ marginTop: 2 }}
      />
      {changes.map((said) => (
        <Say
          key={said[0]}
          said={together(" ", words.caption("amends.changed"), said)}
          style={{ marginTop: 2 }}
        />
      ))}
      <Text style={[styles.small, styles.muted, { marginTop: 1 }]}>
        {amends.number} · {words.caption("contentHash")[0]} {amends.contentHash}
      </Text>
    </View>
  ) : null;
};
