package org.benchtrail.ticket.theorize;

import java.util.List;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.test.ExpectedValue;
import org.jspecify.annotations.Nullable;

/**
 * What is advised to do next, in plain words.
 *
 * @param test null if to act is better than to test
 * @param others the tests after it
 * @param whyNotAct why acting at once is not advised; empty where no test is
 * @param act what is advised where no test is; empty where one is
 * @param held repairs that wait for something, with what they wait for
 * @param usualRepair the catalogue's for the active theory; null if that is not in the catalogue
 */
public record NextView(
        @Nullable Test test,
        List<Test> others,
        String whyNotAct,
        String act,
        List<String> held,
        @Nullable UsualRepair usualRepair) {

    /**
     * A test, ready to be made a check.
     *
     * @param minutes of the test itself
     * @param saves whole minutes it saves on average; empty if the saving is not worth naming
     * @param values what can come out, for a question that is answered at once
     * @param reading whether it is measured
     * @param expectation what is seen if the active theory is right; empty while there is none
     * @param expected the same as bounds of a reading; null where it has none
     */
    public record Test(
            String finding,
            String question,
            long minutes,
            String saves,
            List<String> values,
            boolean reading,
            String unit,
            String expectation,
            @Nullable ExpectedValue expected,
            boolean invasive,
            List<Caution> cautions) {

        /** What is asked for where it is measured. */
        public String measureLabel() {
            return unit.isEmpty() ? "Value with its unit" : "Value, in " + unit + " or with its unit";
        }
    }

    /** The catalogue's repair for a cause. */
    public record UsualRepair(String text, long minutes, String caution, boolean irreversible) {}

    static NextView of(JobSheet sheet, Diagnosis diagnosis) {
        return new NextSteps(sheet, diagnosis).view();
    }
}
