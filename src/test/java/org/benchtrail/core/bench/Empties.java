package org.benchtrail.core.bench;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;

/** Makes a record of nothing: null for objects, -1 for whole numbers, NaN for numbers, false for choices. */
final class Empties {
    private Empties() {}

    static Object of(Class<?> type) throws Throwable {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class[]::new);
        Constructor<?> constructor = type.getDeclaredConstructor(types);
        constructor.setAccessible(true);
        try {
            return constructor.newInstance(
                    Arrays.stream(types).map(Empties::empty).toArray());
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    private static Object empty(Class<?> type) {
        if (type == int.class) {
            return -1;
        }
        if (type == double.class) {
            return Double.NaN;
        }
        return type == boolean.class ? Boolean.FALSE : null;
    }
}
