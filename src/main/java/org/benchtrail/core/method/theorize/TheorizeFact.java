package org.benchtrail.core.method.theorize;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Step;

/** What is recorded to establish a theory of probable cause. */
public sealed interface TheorizeFact extends Fact
        permits ObviousQuestioned, TheoriesRanked, TheoryChosen, TheoryStated {
    @Override
    default Step step() {
        return Step.THEORIZE;
    }
}
