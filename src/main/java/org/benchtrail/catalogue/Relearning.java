package org.benchtrail.catalogue;

import java.util.Map;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Learned;

/** Learns a catalogue that was edited again from the cases that the version before was learned from. */
public interface Relearning {
    /** Figures by category. Cases whose cause is no longer listed are left out. */
    Map<String, Learned> learn(Catalogue practice, LearningBasis basis);
}
