package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.site.SiteBook;

/** Reads job sheets with what this site has set, and with the bench of this server. */
@ApplicationScoped
public class SiteReader implements SheetReader {
    private final SiteBook site;

    private final DeviceBook devices;

    SiteReader(SiteBook site, DeviceBook devices) {
        this.site = site;
        this.devices = devices;
    }

    @Override
    public Optional<String> mains(JobSheet sheet) {
        return devices.mains(sheet.opened().device(), sheet.opened().place())
                .or(() -> Optional.ofNullable(site.rules().mains()));
    }

    @Override
    public double repairOdds() {
        return site.rules().repairOdds().doubleValue();
    }

    @Override
    public Optional<Worked> again(BenchResultAttached attached) {
        return BenchRun.worked(attached);
    }
}
