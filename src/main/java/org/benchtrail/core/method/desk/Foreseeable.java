package org.benchtrail.core.method.desk;

import java.util.List;
import java.util.Objects;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.test.CheckPlanned;
import org.jspecify.annotations.Nullable;

/**
 * What a trainee may forecast besides the causes on a ticket of theirs: a check that is not made, an action that is not settled, a
 * finding that nobody answered. Each once, and only before it can be seen. Nothing waits for it.
 */
public final class Foreseeable {
    private final JobSheet sheet;
    private final Actor actor;

    private Foreseeable(JobSheet sheet, Actor actor) {
        this.sheet = sheet;
        this.actor = actor;
    }

    public static Foreseeable of(JobSheet sheet, Actor actor) {
        return new Foreseeable(sheet, actor);
    }

    /** Whether they forecast here at all: a trainee who has the ticket. */
    public boolean isOffered() {
        return actor.is(Role.TRAINEE)
                && sheet.course().isOpen()
                && actor.account().equals(sheet.course().assignee());
    }

    /** Checks of this round with an expectation, and without a result. */
    public List<StandingFact<CheckPlanned>> checks() {
        return sheet.all(CheckPlanned.class).stream()
                .filter(c -> c.round() == sheet.round()
                        && (c.fact().expected() != null
                                || !c.fact().expectation().isEmpty()))
                .filter(c -> sheet.result(c.entry()).isEmpty() && isNew(ForecastKind.CHECK, c.entry(), null))
                .toList();
    }

    /** Actions of this round that are not settled. */
    public List<StandingFact<ActionPlanned>> actions() {
        return sheet.all(ActionPlanned.class).stream()
                .filter(a -> a.round() == sheet.round()
                        && sheet.settlement(a.entry()).isEmpty()
                        && isNew(ForecastKind.ACTION, a.entry(), null))
                .toList();
    }

    /** Whether nothing that was recorded says anything of that finding of the catalogue. */
    public boolean isOpen(String finding) {
        return isNew(ForecastKind.FINDING, null, finding)
                && sheet.facts().stream()
                        .flatMap(f -> f.fact().says(sheet).stream())
                        .noneMatch(said -> said.finding().equals(finding));
    }

    private boolean isNew(ForecastKind kind, @Nullable Integer about, @Nullable String finding) {
        return sheet.all(ForecastCommitted.class).stream()
                .noneMatch(f -> f.fact().forecast() == kind
                        && Objects.equals(f.fact().about(), about)
                        && Objects.equals(f.fact().finding(), finding)
                        && f.stamp().person().equals(actor.account()));
    }

    /** What keeps that forecast from being made: one that is late, or was made, says nothing. */
    List<Missing> lacking(ForecastCommitted forecast) {
        Integer about = forecast.about();
        boolean ahead = isOffered()
                && switch (forecast.forecast()) {
                    case CHECK -> checks().stream().anyMatch(c -> Objects.equals(c.entry(), about));
                    case ACTION -> actions().stream().anyMatch(a -> Objects.equals(a.entry(), about));
                    case FINDING -> isOpen(Objects.requireNonNull(forecast.finding()));
                    case CAUSES_EARLY, CAUSES -> false;
                };
        return ahead
                ? List.of()
                : Missing.rule(
                        "forecast-not-due",
                        "It can be forecast no more, or was: only the trainee who has the ticket does, once, before it is seen.",
                        Sight.ANCHOR);
    }
}
