package org.benchtrail.core.method.test;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * The result of a check.
 *
 * @param check entry number of the check
 * @param observation what was seen
 * @param outcome what it says about the theory
 * @param reading entry number of the reading it rests on; null for a plain observation
 * @param answer which value of the check's finding it showed; null if the check answers none
 * @param against why the outcome is not the one that the reading decides; null if it is
 */
public record ResultRecorded(
        int check,
        @FreeText String observation,
        CheckOutcome outcome,
        @Nullable Integer reading,
        @Later @Nullable String answer,
        @Later @FreeText @Nullable String against)
        implements TestFact {
    public ResultRecorded {
        FieldChecks t = new FieldChecks();
        observation = t.required("observation", observation, FieldChecks.PARAGRAPH, "Say what was seen.");
        t.require(outcome != null, "outcome", "Say whether it supports the theory, rules it out, or leaves it open.");
        answer = t.orNull("answer", answer, 40);
        against = t.orNull("against", against, FieldChecks.PARAGRAPH);
        t.done();
    }

    /** The result of a check that answers no finding of the catalogue. */
    public ResultRecorded(int check, String observation, CheckOutcome outcome, @Nullable Integer reading) {
        this(check, observation, outcome, reading, null, null);
    }

    /** The same, resting on a reading. */
    public ResultRecorded on(int taken) {
        return new ResultRecorded(check, observation, outcome, taken, answer, against);
    }

    @Override
    public List<Reference> references() {
        Reference made = new Reference(check, CheckPlanned.class, "check");
        return reading == null
                ? List.of(made)
                : List.of(made, new Reference(reading, ReadingRecorded.class, "reading"));
    }

    /** A check is made once, in its round, and an invasive one only behind its guard. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        StandingFact<CheckPlanned> planned = s.sheet().at(check, CheckPlanned.class, "check");
        if (planned.round() != s.sheet().round() || s.sheet().result(check).isPresent()) {
            throw new Invalid("check", "That check has been made, or belongs to an earlier round: plan another one.");
        }
        if (planned.lastStamp().request().equals(s.request())) {
            return Missing.rule(
                    "expectation-first",
                    "Save the check with what you expect first, then make it, then record what was seen.",
                    "expectation-first");
        }
        if (reading != null) {
            requireSpoken(planned, s.sheet().at(reading, ReadingRecorded.class, "reading"));
        }
        String lacking = CheckGuard.lacking(s, planned, observation);
        return lacking.isEmpty() ? List.of() : Missing.rule("invasive-guarded", lacking, "invasive-guarded");
    }

    /** A reading is taken after the check was planned as it stands, and where a value was expected, it decides. */
    private void requireSpoken(StandingFact<CheckPlanned> planned, StandingFact<ReadingRecorded> taken) {
        if (!taken.isAfter(planned.settledSince())) {
            throw new Invalid("reading", "That reading was taken before the check was planned: measure now.");
        }
        Optional<CheckOutcome> decided = planned.fact().decidedBy(taken.fact());
        if (against == null && decided.isPresent() && decided.get() != outcome) {
            throw new Invalid(
                    "outcome",
                    "The reading " + decided.get().words() + ": "
                            + (decided.get() == CheckOutcome.SUPPORTS ? "it is" : "it is not")
                            + " what was expected. Say why you take it otherwise.");
        }
    }

    /** What is told of it may warn of more than the check did. */
    @Override
    public Optional<GuardedAct> guardedAct(JobSheet sheet) {
        return sheet.latest(CheckPlanned.class, c -> c.entry() == check)
                .map(c -> new GuardedAct(check, CheckGuard.owed(c.fact(), observation)));
    }

    @Override
    public Optional<CatalogueAnswer> says(JobSheet sheet) {
        return sheet.latest(CheckPlanned.class, c -> c.entry() == check)
                .flatMap(c -> CatalogueAnswer.of(c.fact().finding(), answer, Source.SEEN));
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(observation, Source.SEEN));
    }

    /** It stands in the row of its check. */
    @Override
    public RecordPlace placeIn(JobSheet sheet) {
        return sheet.latest(CheckPlanned.class, c -> c.entry() == check)
                .map(c -> RecordPlace.TABLE)
                .orElse(RecordPlace.LINE);
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(outcome.words(), observation);
    }
}
