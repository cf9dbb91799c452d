package org.benchtrail.core.method;

import java.util.List;

/**
 * What a reviewer asks of one requirement: the gate says that something was recorded, the reviewer whether it is true of the job.
 *
 * @param question as it is put to the reviewer
 * @param usual class of a defect here
 * @param restsOn kinds of entry that the answer usually rests on
 */
public record ReviewQuestion(String question, DefectClass usual, List<Class<? extends Fact>> restsOn) {
    @SafeVarargs
    public static ReviewQuestion minor(String question, Class<? extends Fact>... restsOn) {
        return new ReviewQuestion(question, DefectClass.MINOR, List.of(restsOn));
    }

    @SafeVarargs
    public static ReviewQuestion major(String question, Class<? extends Fact>... restsOn) {
        return new ReviewQuestion(question, DefectClass.MAJOR, List.of(restsOn));
    }

    @SafeVarargs
    public static ReviewQuestion critical(String question, Class<? extends Fact>... restsOn) {
        return new ReviewQuestion(question, DefectClass.CRITICAL, List.of(restsOn));
    }
}
