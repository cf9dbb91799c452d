package org.benchtrail.ticket;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.MentorPresent;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.jspecify.annotations.Nullable;

/**
 * What a trainee is told beside an act that they do only with their mentor present.
 *
 * @param about as in {@link GuardedAct#about}
 * @param here who is present, and until when that counts; empty if nobody is
 */
public record PresenceNote(int about, String here) {

    /** Null where the viewer needs nobody. */
    public static @Nullable PresenceNote of(Viewing viewing, int about, Set<Caution> cautions) {
        boolean needed =
                viewing.isViewersOwn() && viewing.viewer().is(Role.TRAINEE) && MentorPresent.isNeeded(cautions);
        return needed ? new PresenceNote(about, here(viewing, about)) : null;
    }

    private static String here(Viewing viewing, int about) {
        Optional<StandingFact<PresenceSigned>> open =
                MentorPresent.open(viewing.sheet(), about, viewing.viewer().account(), viewing.now());
        return open.map(p -> here(p, viewing.name(p.stamp().by()), viewing.zone()))
                .orElse("");
    }

    /** Who is present, since when and until when that counts. */
    public static String here(StandingFact<PresenceSigned> presence, String name, ZoneId zone) {
        Instant from = presence.stamp().at();
        return name + ", signed in " + Times.text(from, zone) + ", until "
                + Times.text(from.plus(MentorPresent.LASTS), zone);
    }
}
