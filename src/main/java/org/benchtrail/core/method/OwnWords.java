package org.benchtrail.core.method;

import java.lang.reflect.RecordComponent;
import org.benchtrail.core.Invalid;

/** Keeps the mark of words that were erased from being written where nothing was: it would look like words that somebody once wrote. */
public final class OwnWords {
    private OwnWords() {}

    /** @throws Invalid on the component that is nothing but that mark */
    public static void require(Fact fact) {
        Invalid.Collector problems = new Invalid.Collector();
        require(fact, "", problems);
        problems.throwIfAny();
    }

    private static void require(Object record, String group, Invalid.Collector problems) {
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            String name = group + component.getName();
            Object value = FactKinds.value(record, component);
            if (value instanceof Fact inside) {
                require(inside, name + ".", problems);
            } else if (component.isAnnotationPresent(FreeText.class)) {
                problems.require(
                        !(value instanceof String text) || !text.strip().equalsIgnoreCase(FreeText.ERASED),
                        name,
                        "Say it in other words: '" + FreeText.ERASED + "' stands where words were erased.");
            }
        }
    }
}
