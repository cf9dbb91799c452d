package org.benchtrail.core.method.test;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A check of a theory.
 *
 * @param theory entry number of the theory it tests
 * @param what what is done or measured
 * @param expectation what is seen if the theory is right; a check without one proves nothing and does not count
 * @param invasive whether it opens, stops or changes something
 * @param cautions what must be acknowledged before it is made
 * @param finding id of the catalogue's finding that it answers; null if none
 * @param expected the reading that is expected, if it is one; null if the words alone say it
 */
public record CheckPlanned(
        int theory,
        @FreeText String what,
        @FreeText String expectation,
        boolean invasive,
        Set<Caution> cautions,
        @Later @Nullable String finding,
        @Later @Nullable ExpectedValue expected)
        implements TestFact {
    public CheckPlanned {
        FieldChecks t = new FieldChecks();
        what = t.required("what", what, FieldChecks.PARAGRAPH, "Say what will be done or measured.");
        expectation = t.optional("expectation", expectation, FieldChecks.PARAGRAPH);
        cautions = EnumCopies.set(Caution.class, cautions);
        finding = t.orNull("finding", finding, 80);
        t.done();
    }

    /** A check of the technician's own. */
    public CheckPlanned(int theory, String what, String expectation, boolean invasive, Set<Caution> cautions) {
        this(theory, what, expectation, invasive, cautions, null, null);
    }

    /** The same check of that theory. */
    public CheckPlanned of(int other) {
        return new CheckPlanned(other, what, expectation, invasive, cautions, finding, expected);
    }

    /** What a reading says of the theory; empty unless a certain reading is expected. */
    Optional<CheckOutcome> decidedBy(ReadingRecorded reading) {
        return Optional.ofNullable(expected).map(e -> e.holds(reading) ? CheckOutcome.SUPPORTS : CheckOutcome.REFUTES);
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(theory, TheoryStated.class, "theory"));
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    /** One that was made stays as it is. */
    @Override
    public List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor actor) {
        if (sheet.result(self.entry()).isPresent()) {
            return Missing.reliedOn();
        }
        return replacement instanceof CheckPlanned other
                ? CautionsAcknowledged.kept(cautions, other.cautions)
                : List.of();
    }

    /** Words, the finding's dangers and the category say what it touches; the tick alone does not. */
    @Override
    public Fact completedBy(ServerKnowledge server) {
        Set<Caution> raised = EnumSet.noneOf(Caution.class);
        raised.addAll(Caution.raisedBy(what));
        raised.addAll(Caution.toldBy(expectation));
        if (finding != null) {
            raised.addAll(server.cautionsOfFinding(finding));
        }
        boolean touching = invasive || !raised.isEmpty() || Caution.touches(what);
        if (touching) {
            raised.addAll(Caution.usualFor(server.category()));
        }
        raised.addAll(cautions);
        return new CheckPlanned(theory, what, expectation, touching, raised, finding, expected);
    }

    @Override
    public RecordPlace placeIn(JobSheet sheet) {
        return RecordPlace.TABLE;
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                what,
                Told.labelled("expected", Told.all(expectation, expected == null ? "" : expected.words())),
                invasive ? "invasive" : "",
                Told.labelled("cautions", Told.list(cautions, Caution::title)));
    }
}
