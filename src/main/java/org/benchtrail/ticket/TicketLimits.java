package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Provenance;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.site.Nameplate;
import org.benchtrail.limits.LimitBook;
import org.benchtrail.site.DeviceBook;

/** The limits that a reading on a ticket can be held against: all that are offered, and those on the nameplate of its device. */
@ApplicationScoped
@Transactional
public class TicketLimits {
    private final LimitBook limits;
    private final DeviceBook devices;

    TicketLimits(LimitBook limits, DeviceBook devices) {
        this.limits = limits;
        this.devices = devices;
    }

    public LimitLibrary of(JobSheet sheet) {
        LimitLibrary library = limits.library();
        int place = 0;
        List<Nameplate.Line> lines = devices.known(sheet.opened().device())
                .map(device -> device.limits().lines())
                .orElse(List.of());
        for (Nameplate.Line line : lines) {
            place++;
            String id = "nameplate-" + place;
            if (library.find(id).isEmpty()) { // a site may have given a limit of its own that name
                library = library.with(
                        new LimitLibrary.Row(id, line.quantity(), line.limit(), "-", Provenance.GIVEN, ""));
            }
        }
        return library;
    }
}
