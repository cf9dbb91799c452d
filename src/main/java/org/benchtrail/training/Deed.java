package org.benchtrail.training;

import java.util.List;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth.Played;
import org.jspecify.annotations.Nullable;

/**
 * What can be done on a practice job beside its sheet: an act on the device, or a time of waiting.
 *
 * @param act null if it only waits
 * @param waits minutes
 */
record Deed(String id, @Nullable DeviceAct act, double waits) {
    static final Deed MENTOR = new Deed("wait-for-mentor", null, 5);

    static final List<Deed> WAITING = List.of(
            new Deed("wait-an-hour", null, 60),
            new Deed("wait-a-day", null, 24 * 60),
            new Deed("wait-two-days", null, 48 * 60));

    /** As its button says. */
    public String words() {
        return id.replace('-', ' ');
    }

    /** @throws org.benchtrail.core.Invalid if there is nothing of that name */
    static Deed of(Family family, String id) {
        if (id.equals(MENTOR.id)) {
            return MENTOR;
        }
        return WAITING.stream()
                .filter(w -> w.id.equals(id))
                .findFirst()
                .orElseGet(() -> new Deed(id, family.act(id), 0));
    }

    Played on(Played played) {
        return act == null ? played.waited(waits) : played.with(act);
    }
}
