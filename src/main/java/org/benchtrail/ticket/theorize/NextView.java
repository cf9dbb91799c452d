package org.benchtrail.ticket.theorize;

import java.util.List;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.test.ExpectedValue;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.jspecify.annotations.Nullable;

/**
 * What is advised to do next, in plain words.
 *
 * @param tests best first, at most three; none if to act is better, or nothing may be tested
 * @param lead what is said before them; empty if nothing is
 * @param act what is advised where no test is; empty where one is
 * @param waits repairs and tests that wait for something, with what they wait for
 * @param usualRepair the catalogue's for the active theory; null if that is not in the catalogue
 */
public record NextView(
        List<Test> tests,
        String lead,
        String act,
        List<String> waits,
        @Nullable UsualRepair usualRepair) {

    /**
     * A test, ready to be made or to be made a check.
     *
     * @param label a statement that the question asks for
     * @param act what to do
     * @param question what to look for
     * @param minutes of the test itself
     * @param saves whole minutes it saves on average; empty if the saving is not worth naming
     * @param values what can come out, for a question that is answered at once
     * @param reading whether it is measured
     * @param expectation what is seen if the active theory is right; empty while there is none
     * @param expected the same as bounds of a reading; null where it has none
     * @param why it is shown where it is not the best for the theory; empty otherwise
     */
    public record Test(
            String finding,
            String label,
            String act,
            String question,
            long minutes,
            String saves,
            List<Option> values,
            boolean reading,
            String unit,
            String expectation,
            @Nullable ExpectedValue expected,
            boolean invasive,
            List<Caution> cautions,
            String why) {

        /** What is asked for where it is measured. */
        public String measureLabel() {
            return unit.isEmpty() ? "Value with its unit" : "Value, in " + unit + " or with its unit";
        }

        /** What stands before the ids of the fields of its form: nothing for the one that was sent last. */
        public String prefix(FormValues fill) {
            return fill.is("reading.finding", finding) ? "" : finding + "-";
        }

        /** What a check of it does. */
        public String what() {
            return reading ? act : act + " " + question;
        }

        Test because(String reason) {
            return new Test(
                    finding,
                    label,
                    act,
                    question,
                    minutes,
                    saves,
                    values,
                    reading,
                    unit,
                    expectation,
                    expected,
                    invasive,
                    cautions,
                    reason);
        }
    }

    /** The catalogue's repair for a cause. */
    public record UsualRepair(String text, long minutes, String caution, boolean irreversible) {}

    static NextView of(JobSheet sheet, Diagnosis diagnosis) {
        return new NextSteps(sheet, diagnosis).view();
    }
}
