package org.benchtrail.training;

import java.util.HashMap;
import java.util.Map;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.BenchResultAttached;

/** What the soak times on a sheet were made from. */
final class Soaks {
    private Soaks() {}

    /** By entry, without those that the bench makes otherwise by now. */
    static Map<Integer, Soak.Input> of(JobSheet sheet) {
        Map<Integer, Soak.Input> soaks = new HashMap<>();
        sheet.all(BenchResultAttached.class).stream()
                .filter(b -> b.fact().calculation().equals(Soak.CALCULATION.id()))
                .forEach(b -> BenchRun.worked(b.fact())
                        .ifPresent(worked -> soaks.put(b.entry(), (Soak.Input) worked.input())));
        return soaks;
    }
}
