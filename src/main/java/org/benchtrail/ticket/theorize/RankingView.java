package org.benchtrail.ticket.theorize;

import java.util.List;
import java.util.Objects;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sight;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Diagnoses;

/**
 * The ranked causes of a ticket in plain words: why, why not, what would change it, and what to do next.
 *
 * @param catalogue its version
 * @param figures where the percentages come from
 * @param rested whether anything recorded bears on the causes
 * @param leading how the leader stands, in one sentence
 * @param causes the first five, and what is not listed
 * @param choices every listed cause, the likeliest first, to choose a theory from
 * @param warnings what is odd about the evidence
 * @param flips what would change the order; empty without evidence
 * @param questions of the category, with the answers that stand
 * @param suggestions answers that words of the sheet suggest
 * @param otherKind of trouble that the words fit better; empty if there is none
 * @param where the fault is
 * @param advised what to do next
 */
public record RankingView(
        int catalogue,
        String figures,
        boolean rested,
        String leading,
        List<Line> causes,
        List<Line> choices,
        List<String> warnings,
        String flips,
        List<Question> questions,
        List<SuggestedAnswer> suggestions,
        String otherKind,
        WhereView where,
        NextView advised) {

    /**
     * A cause with its place.
     *
     * @param percent of a bar's length, 1 to 99
     * @param why what speaks for it, strongest first
     * @param whyNot what speaks against it, strongest first
     * @param out whether an earlier round ruled it out
     */
    public record Line(
            String id, String name, String chance, long percent, List<String> why, List<String> whyNot, boolean out) {}

    /**
     * A question of the catalogue.
     *
     * @param label a statement that it asks for
     * @param answer that stands; empty if none does
     * @param from the entry that the answer follows from; 0 where somebody answered the question itself
     * @param notNamed whether it only was not named beside that entry
     */
    public record Question(
            String id,
            String label,
            String text,
            List<Option> values,
            String answer,
            int from,
            boolean reading,
            boolean notNamed) {
        public boolean isDerived() {
            return from > 0;
        }
    }

    /**
     * An answer that words of the sheet suggest. It weighs nothing until it is given.
     *
     * @param entry in which the words stand
     * @param value that they suggest; empty if they only raise the question
     * @param others the other answers
     */
    public record SuggestedAnswer(
            int entry,
            String words,
            String finding,
            String question,
            String value,
            List<Option> others,
            Source source) {}

    /** @param sight of whom it is for: who may not see it has none */
    public static RankingView of(JobSheet sheet, Diagnoses.Dated dated, Sight.Open sight) {
        Objects.requireNonNull(sight);
        RankedCauses ranked = new RankedCauses(sheet, dated.diagnosis());
        return new RankingView(
                dated.version(),
                dated.label(),
                dated.diagnosis().hasEvidence(),
                ranked.leading(),
                ranked.causes(),
                ranked.choices(),
                ranked.warnings(),
                ranked.flips(),
                ranked.questions(),
                ranked.suggestions(),
                dated.otherKind() == null ? "" : dated.otherKind().title(),
                WhereView.of(dated.diagnosis().where()),
                NextView.of(sheet, dated.diagnosis()));
    }

    /** The questions of the category with the answers that stand; they tell no cause, and whoever works sees them. */
    public static List<Question> questions(JobSheet sheet, Diagnoses.Dated dated) {
        return new RankedCauses(sheet, dated.diagnosis()).questions();
    }

    public String label() {
        return figures + "; catalogue version " + catalogue;
    }

    /** The causes of the category by name. */
    public List<Option> causeNames() {
        return choices.stream().map(c -> new Option(c.id(), c.name())).toList();
    }
}
