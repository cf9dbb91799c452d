package org.benchtrail.core.advice;

import java.util.Optional;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.BenchResultAttached;

/** What it takes to read a job sheet, beside the sheet itself. */
public interface SheetReader {
    /** Nothing is known of the site, and no result is worked again. */
    SheetReader PLAIN = new SheetReader() {
        @Override
        public Optional<String> mains(JobSheet sheet) {
            return Optional.empty();
        }

        @Override
        public Optional<Worked> again(BenchResultAttached attached) {
            return Optional.empty();
        }
    };

    /** A calculation with what it was given and what came out. */
    record Worked(Record input, Result result) {}

    /** The nominal mains voltage where the device of that sheet is, V, as the catalogue's cases name it; empty if nobody said. */
    Optional<String> mains(JobSheet sheet);

    /** The result worked again out of its input; empty if the calculation is another one by now. */
    Optional<Worked> again(BenchResultAttached attached);

    /** The odds that a cause has to have before its repair is advised where tests are left, such as 3 for 3 to 1. */
    default double repairOdds() {
        return 3;
    }
}
