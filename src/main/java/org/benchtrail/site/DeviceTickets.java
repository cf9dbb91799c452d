package org.benchtrail.site;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.jspecify.annotations.Nullable;

/** What tickets tell of a device; they are another feature's. */
public interface DeviceTickets {

    /** A ticket of the device. */
    record Ticket(String number, String title, boolean open, String state, Instant opened) {}

    /**
     * A reading that was taken on a ticket of the device.
     *
     * @param value in {@code unit}
     * @param verdict in words
     */
    record Measured(
            Instant at,
            String ticket,
            int entry,
            String quantity,
            String point,
            double value,
            String shown,
            String unit,
            @Nullable Double lower,
            @Nullable Double upper,
            String verdict) {}

    /** Open ones first, then the latest; at most 50. */
    List<Ticket> tickets(String label, Actor viewer);

    /** Readings of the latest tickets, the earliest first. */
    List<Measured> readings(String label, Actor viewer);
}
