package org.benchtrail.core.method.desk;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.test.CheckPlanned;

/**
 * Whether a trainee may do a dangerous act now: their mentor signed in to be present for it, for this entry as it stands, not
 * longer ago than {@link #LASTS}, and nothing was done under that presence yet.
 *
 * <p>What the server knows is that a second person's credentials were used then, not that they stood there.
 */
public final class MentorPresent {
    public static final String CODE = "mentor-present";

    /** How long a presence opens its act, the last moment included; common practice, no source. */
    public static final Duration LASTS = Duration.ofMinutes(30);

    private static final Set<Caution> DANGERS = Collections.unmodifiableSet(EnumSet.of(
            Caution.LIVE,
            Caution.MAINS,
            Caution.BATTERY,
            Caution.SWELLING,
            Caution.CAPACITOR,
            Caution.LASER,
            Caution.DATA_LOSS));

    private MentorPresent() {}

    /** Whether a trainee does no act that these guard without a mentor. */
    public static boolean isNeeded(Set<Caution> cautions) {
        return cautions.stream().anyMatch(DANGERS::contains);
    }

    /** What keeps that person from that act for want of a mentor; empty if nothing does. */
    public static List<Missing> lacking(JobSheet sheet, Fact fact, Actor actor, Instant now) {
        Optional<GuardedAct> act = actor.is(Role.TRAINEE) ? fact.guardedAct(sheet) : Optional.empty();
        return act.isEmpty()
                        || !isNeeded(act.get().cautions())
                        || open(sheet, act.get().about(), actor.account(), now).isPresent()
                ? List.of()
                : Missing.rule(
                        CODE,
                        "This is dangerous work: your mentor signs in to be present before you do it, for this one act.",
                        "presence");
    }

    /**
     * The presence under which that trainee may do that now.
     *
     * @param about as in {@link GuardedAct#about}
     */
    public static Optional<StandingFact<PresenceSigned>> open(JobSheet sheet, int about, String trainee, Instant now) {
        return sheet.latest(
                PresenceSigned.class,
                p -> p.fact().trainee().equals(trainee)
                        && p.round() == sheet.round()
                        && Duration.between(p.stamp().at(), now).compareTo(LASTS) <= 0
                        && !isEnded(sheet, p.entry())
                        && (about == GuardedAct.NO_CHECK ? isOpenToMeasure(sheet, p) : isOpenTo(sheet, p, about)));
    }

    private static boolean isOpenTo(JobSheet sheet, StandingFact<PresenceSigned> presence, int about) {
        return presence.fact().about() == about
                && isToDo(sheet, about)
                && sheet.latest(Fact.class, f -> f.entry() == about)
                        .filter(planned -> presence.isAfter(planned.settledSince()))
                        .isPresent();
    }

    /** A live measurement is made once under a presence, be it one for a check; nothing is put right meanwhile. */
    private static boolean isOpenToMeasure(JobSheet sheet, StandingFact<PresenceSigned> presence) {
        int about = presence.fact().about();
        boolean measured = sheet.latest(
                        ReadingRecorded.class,
                        r -> r.isAfter(presence.entry())
                                && r.fact().guardedAct(sheet).isPresent())
                .isPresent();
        boolean corrected =
                sheet.latest(Corrected.class, c -> c.isAfter(presence.entry())).isPresent();
        return !measured && !corrected && (about == GuardedAct.NO_CHECK || isOpenTo(sheet, presence, about));
    }

    /** Whether that is a check or an action of this round that is not carried out yet, or stands for a live measurement. */
    public static boolean isToDo(JobSheet sheet, int about) {
        boolean check = sheet.latest(CheckPlanned.class, c -> c.entry() == about && c.round() == sheet.round())
                        .isPresent()
                && sheet.result(about).isEmpty();
        boolean action = sheet.latest(ActionPlanned.class, a -> a.entry() == about && a.round() == sheet.round())
                        .isPresent()
                && sheet.settlement(about).isEmpty();
        return about == GuardedAct.NO_CHECK || check || action;
    }

    /** Whether the mentor has said how it went. */
    public static boolean isEnded(JobSheet sheet, int presence) {
        return sheet.latest(PresenceEnded.class, e -> e.fact().presence() == presence)
                .isPresent();
    }
}
