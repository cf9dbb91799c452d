package org.benchtrail.ticket.desk;

import java.util.Optional;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.ticket.Viewing;

/**
 * A ticket offered to somebody and not taken yet.
 *
 * @param to name of whom it is offered to
 * @param by who offered it, and when
 * @param note empty if there is none
 */
public record OfferView(String to, String by, String note) {

    static Optional<OfferView> of(Viewing viewing) {
        String to = viewing.sheet().course().offered();
        return to == null
                ? Optional.empty()
                : viewing.sheet()
                        .latest(HandOverOffered.class)
                        .map(o -> new OfferView(
                                viewing.name(to), viewing.stamp(o), o.fact().note()));
    }
}
