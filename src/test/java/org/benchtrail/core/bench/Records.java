package org.benchtrail.core.bench;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/** Takes records apart and builds them again with one component exchanged, so that tests can walk every input alike. */
final class Records {
    /** A copy of the input with one of its numbers, choices or texts exchanged, under the path of that place. */
    record Variant(String path, Object input) {}

    private Records() {}

    static Object[] values(Object aRecord) throws ReflectiveOperationException {
        RecordComponent[] components = aRecord.getClass().getRecordComponents();
        Object[] values = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            components[i].getAccessor().setAccessible(true);
            values[i] = components[i].getAccessor().invoke(aRecord);
        }
        return values;
    }

    /** @throws RuntimeException what the record's constructor throws */
    static Object build(Class<?> type, Object[] values) throws ReflectiveOperationException {
        Class<?>[] types = Arrays.stream(type.getRecordComponents())
                .map(RecordComponent::getType)
                .toArray(Class<?>[]::new);
        try {
            var constructor = type.getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return constructor.newInstance(values);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw e;
        }
    }

    /** A place in an input, nested lists included, with a way to build the input with another value there. */
    interface Place {
        String path();

        RecordComponent component();

        Object value();

        Object with(Object other) throws ReflectiveOperationException;
    }

    private record Found(String path, RecordComponent component, Object value, Exchange exchange) implements Place {
        @Override
        public Object with(Object other) throws ReflectiveOperationException {
            return exchange.with(other);
        }
    }

    @FunctionalInterface
    private interface Exchange {
        Object with(Object other) throws ReflectiveOperationException;
    }

    static List<Place> places(Object input) throws ReflectiveOperationException {
        List<Place> found = new ArrayList<>();
        collect("", input, other -> other, found);
        return found;
    }

    private static void collect(String prefix, Object aRecord, Exchange outer, List<Place> found)
            throws ReflectiveOperationException {
        RecordComponent[] components = aRecord.getClass().getRecordComponents();
        Object[] values = values(aRecord);
        for (int i = 0; i < components.length; i++) {
            int index = i;
            Exchange here = other -> {
                Object[] changed = values.clone();
                changed[index] = other;
                return outer.with(build(aRecord.getClass(), changed));
            };
            String path = prefix + components[i].getName();
            found.add(new Found(path, components[i], values[i], here));
            if (values[i] instanceof List<?> list) {
                entries(path, components[i], list, here, found);
            }
        }
    }

    private static void entries(String path, RecordComponent component, List<?> list, Exchange outer, List<Place> found)
            throws ReflectiveOperationException {
        for (int i = 0; i < list.size(); i++) {
            int index = i;
            Exchange here = other -> {
                List<Object> changed = new ArrayList<>(list);
                changed.set(index, other);
                return outer.with(changed);
            };
            String entry = path + "[" + i + "]";
            if (list.get(i) instanceof Record nested) {
                collect(entry + ".", nested, here, found);
            } else {
                found.add(new Found(entry, component, list.get(i), here));
            }
        }
    }

    static boolean holds(Place place, Function<Class<?>, Boolean> kind) {
        return place.value() != null && kind.apply(place.value().getClass());
    }
}
