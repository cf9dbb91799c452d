package org.benchtrail.ticket.api;

import java.util.List;
import org.benchtrail.core.method.Caution;
import org.benchtrail.ticket.theorize.NextView;
import org.benchtrail.ticket.theorize.RankingView;
import org.jspecify.annotations.Nullable;

/**
 * The causes of a ticket, ranked.
 *
 * @param catalogue version of the catalogue
 * @param figures where they come from
 * @param next id of the finding that is best asked next; null if acting is better
 */
public record RankingJson(
        int catalogue,
        String figures,
        boolean hasEvidence,
        List<CauseJson> causes,
        List<String> warnings,
        String flips,
        @Nullable TestJson next,
        String act) {

    /**
     * A cause with its place.
     *
     * @param percent of a bar's length, 1 to 99
     * @param why what speaks for it, strongest first
     * @param whyNot what speaks against it, strongest first
     * @param out whether an earlier round ruled it out
     */
    public record CauseJson(
            String id, String name, String chance, long percent, List<String> why, List<String> whyNot, boolean out) {
        static CauseJson of(RankingView.Line c) {
            return new CauseJson(c.id(), c.name(), c.chance(), c.percent(), c.why(), c.whyNot(), c.out());
        }
    }

    /**
     * A test, ready to be made a check.
     *
     * @param minutes of the test itself
     * @param saves whole minutes it saves on average; empty if the saving is not worth naming
     * @param values what can come out, for a question that is answered at once
     * @param reading whether it is measured
     * @param expectation what is seen if the active theory is right; empty while there is none
     */
    public record TestJson(
            String finding,
            String question,
            long minutes,
            String saves,
            List<String> values,
            boolean reading,
            String unit,
            String expectation,
            boolean invasive,
            List<Caution> cautions) {
        static @Nullable TestJson of(NextView.@Nullable Test t) {
            return t == null
                    ? null
                    : new TestJson(
                            t.finding(),
                            t.question(),
                            t.minutes(),
                            t.saves(),
                            t.values(),
                            t.reading(),
                            t.unit(),
                            t.expectation(),
                            t.invasive(),
                            t.cautions());
        }
    }

    static RankingJson of(RankingView r) {
        return new RankingJson(
                r.catalogue(),
                r.figures(),
                r.rested(),
                r.causes().stream().map(CauseJson::of).toList(),
                r.warnings(),
                r.flips(),
                TestJson.of(r.advised().test()),
                r.advised().act());
    }
}
