package org.benchtrail.core.method;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.ForecastFact;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.LikenessChecked;

/**
 * Whether somebody may see what tells the causes of a ticket, or first says what they expect. Every view that tells causes,
 * their chances or the test to make next asks here, and takes the {@link Open} that nobody else makes.
 *
 * <p>A trainee forecasts the causes of a ticket of theirs before likeness is shown (once after each opening), and again in each round
 * before the ranking is. From Plan on a theory is borne out, and nothing is left to forecast. On a colleague's ticket a
 * trainee sees all. Hazards, cautions and stop-work are no matter of sight.
 */
public sealed interface Sight {
    String CODE = "forecast-first";

    /** Where the forecast is made on the job sheet. */
    String ANCHOR = "forecast";

    /** What is lacking where it may not be told whether anything is alike. */
    String AFTER = "Look at the similar tickets and known causes, which are shown after your forecast.";

    /** All may be seen. */
    final class Open implements Sight {
        private static final Open ALL = new Open();

        private Open() {}
    }

    /**
     * Nothing may be seen yet.
     *
     * @param due the forecast that comes first
     */
    record Veiled(ForecastKind due) implements Sight {
        private static List<Missing> missing() {
            return Missing.rule(
                    CODE, "Your forecast comes first: say what you expect, then it is shown and you go on.", ANCHOR);
        }
    }

    /** Nothing is veiled on a practice job, which is no ticket. */
    static Open ofPractice() {
        return Open.ALL;
    }

    /** Of ranked causes, tests to make next, and where the fault is. */
    static Sight of(JobSheet sheet, Actor viewer) {
        if (!isBound(sheet, viewer) || hasSaid(sheet, viewer, ForecastKind.CAUSES)) {
            return Open.ALL;
        }
        return ofLikeness(sheet, viewer) instanceof Veiled veiled ? veiled : new Veiled(ForecastKind.CAUSES);
    }

    /** Of what is like a ticket: other tickets, known causes, and the catalogue's figures for its kind of trouble. */
    static Sight ofLikeness(JobSheet sheet, Actor viewer) {
        if (!isBound(sheet, viewer)
                || hasSaid(sheet, viewer, ForecastKind.CAUSES_EARLY)
                || hasSaid(sheet, viewer, ForecastKind.CAUSES)) {
            return Open.ALL;
        }
        return new Veiled(sheet.step() == Step.IDENTIFY ? ForecastKind.CAUSES_EARLY : ForecastKind.CAUSES);
    }

    /** Whether that person forecasts on that ticket, or would if they had it. */
    static boolean isBound(JobSheet sheet, Actor viewer) {
        return viewer.is(Role.TRAINEE)
                && sheet.course().isOpen()
                && sheet.step().isBefore(Step.PLAN)
                && (sheet.course().assignee() == null || hasHadIt(sheet, viewer.account()));
    }

    /** Whether what is seen of causes on the ticket of a colleague counts as seen before a forecast of one's own. */
    static boolean isOnlooker(JobSheet sheet, Actor viewer) {
        return viewer.is(Role.TRAINEE) && sheet.course().isOpen() && !isBound(sheet, viewer);
    }

    /** To hand it over and take it back changes nothing. */
    private static boolean hasHadIt(JobSheet sheet, String account) {
        return sheet.isHand(account)
                || account.equals(sheet.opened().assignee())
                || sheet.all(HandedOver.class).stream()
                        .anyMatch(h -> account.equals(h.fact().to()));
    }

    /** The causes are forecast once a round, and before likeness once after each opening; either may be skipped. */
    private static boolean hasSaid(JobSheet sheet, Actor viewer, ForecastKind kind) {
        int since = kind == ForecastKind.CAUSES
                ? sheet.course().roundStart()
                : sheet.course().openedAt();
        return sheet.all(ForecastFact.class).stream()
                .anyMatch(f -> f.fact().forecast() == kind
                        && f.isAfter(since)
                        && f.fact().forecaster(f.stamp()).equals(viewer.account()));
    }

    /** The sheet without the rankings that the server recorded on it, where they may not be seen. */
    static JobSheet shown(JobSheet sheet, Actor viewer) {
        return of(sheet, viewer) instanceof Open
                ? sheet
                : sheet.only(standing -> !standing.fact().tellsRanking());
    }

    /** What has to be known before a forecast makes sense. */
    static List<Missing> beforeForecast(Situation s) {
        return Stream.of(
                        IdentifyRequirement.SYMPTOM_OBSERVED,
                        IdentifyRequirement.ONSET_KNOWN,
                        IdentifyRequirement.SCOPE_KNOWN,
                        IdentifyRequirement.HAZARDS_SCREENED)
                .map(r -> r.status(s))
                .filter(status -> status.state() == Requirement.State.MISSING)
                .map(Requirement.Status::missing)
                .toList();
    }

    /** What keeps that person from an act that rests on what they may not see yet, and whose refusal would tell it. */
    static List<Missing> refusal(JobSheet sheet, Fact fact, Actor actor) {
        boolean choosing = fact.restsOnRanking() || (fact instanceof Advanced && sheet.step() == Step.THEORIZE);
        if (choosing && of(sheet, actor) instanceof Veiled) {
            return Veiled.missing();
        }
        return fact instanceof LikenessChecked && ofLikeness(sheet, actor) instanceof Veiled
                ? Veiled.missing()
                : List.of();
    }

    /** A gap as it may be told: not whether anything is alike. */
    static Missing told(Missing missing, JobSheet sheet, Actor viewer) {
        return missing.code().equals(IdentifyRequirement.LIKENESS_CHECKED.code())
                        && ofLikeness(sheet, viewer) instanceof Veiled
                ? new Missing(missing.code(), AFTER, ANCHOR, missing.waivable())
                : missing;
    }

    /** The same of a line of the gate. */
    static Requirement.Status told(Requirement.Status status, JobSheet sheet, Actor viewer) {
        return status.requirement() == IdentifyRequirement.LIKENESS_CHECKED
                        && status.state() == Requirement.State.MISSING
                        && ofLikeness(sheet, viewer) instanceof Veiled
                ? new Requirement.Status(status.requirement(), status.state(), AFTER)
                : status;
    }
}
