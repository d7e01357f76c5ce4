import { Text, View } from "@react-pdf/renderer";
import { codeText, PageCode } from "./page-code";
import type { OnPaper } from "./paper";
import { styles } from "./styles";
import { inLine } from "./words";

/** 7.8.2.1 a, b, d: on every page who issued it, its number, and what it is. */
export const PageHead = ({ paper: { content, words } }: OnPaper) => (
  <View style={styles.head} fixed>
    <View style={styles.headMark} />
    <View style={{ maxWidth: 330 }}>
      <Text style={styles.headName}>{content.laboratory.name}</Text>
      <Text style={[styles.small, styles.muted]}>
        {[content.laboratory.addressLines.join(", "), content.laboratory.contact].join(" · ")}
      </Text>
    </View>
    <View style={{ alignItems: "flex-end" }}>
      <Text style={styles.headNumber}>{content.number}</Text>
      <Text style={[styles.small, styles.muted, styles.number]}>{inLine(words.sentence(content.title))}</Text>
    </View>
  </View>
);

/** 7.8.2.1 d: page n of N on every page; and how anybody who holds this page can check it. */
export const PageFoot = ({ paper: { content, contentHash, draft, words } }: OnPaper) => {
  const { laboratory, number } = content;
  const address = draft ? undefined : content.authenticity?.address;
  return (
    <>
      <Text
        fixed
        style={styles.footNumber}
        render={({ pageNumber, totalPages }) =>
          `${number} · ${inLine(words.caption("pageOf", { page: String(pageNumber), pages: String(totalPages) }))}`
        }
      />
      <View style={styles.foot} fixed>
        <View style={{ flex: 1, paddingRight: 14, paddingTop: 19 }}>
          {address ? (
            <Text>
              {inLine(words.caption("check"))}: <Text style={{ color: styles.page.color }}>{address}</Text>
            </Text>
          ) : null}
          <Text>
            {words.caption("contentHash")[0]} {contentHash}
          </Text>
          {laboratory.demonstration ? <Text>{inLine(words.caption("demonstration"))}</Text> : null}
        </View>
        {address ? <PageCode text={codeText(address, contentHash)} /> : null}
      </View>
    </>
  );
};

/**
 * What a person sees before sign-off: on every page, under the text. In a solid light ink: what is archived has no
 * transparency, and a draft is drawn by the same hand.
 */
export const Watermark = ({ paper }: OnPaper) =>
  paper.draft ? (
    <Text style={styles.watermark} fixed>
      {paper.words.caption("draft")[0]}
    </Text>
  ) : null;
