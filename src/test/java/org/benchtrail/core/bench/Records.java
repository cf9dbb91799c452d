package org.benchtrail.core.bench;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/** Takes records apart and builds them again with one component exchanged, so that tests can walk every input alike. */
final class Records {
    /** A copy of the input with one of its numbers, choices or texts exchanged, under the path of that place. */
    record Variant(String path, Object input) {}

    private Records() {}

    /** What reflection knows of a record, asked once: it makes components and their accessors anew at every question. */
    private record Shape(RecordComponent[] components, Constructor<?> constructor) {
        private static final ClassValue<Shape> OF = new ClassValue<>() {
            @Override
            protected Shape computeValue(Class<?> type) {
                RecordComponent[] components = type.getRecordComponents();
                Class<?>[] types =
                        Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
                try {
                    Constructor<?> constructor = type.getDeclaredConstructor(types);
                    constructor.setAccessible(true);
                    for (RecordComponent component : components) {
                        component.getAccessor().setAccessible(true);
                    }
                    return new Shape(components, constructor);
                } catch (NoSuchMethodException e) {
                    throw new IllegalStateException(e);
                }
            }
        };

        static Shape of(Class<?> type) {
            return OF.get(type);
        }
    }

    static Object[] values(Object aRecord) throws ReflectiveOperationException {
        RecordComponent[] components = Shape.of(aRecord.getClass()).components();
        Object[] values = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            values[i] = components[i].getAccessor().invoke(aRecord);
        }
        return values;
    }

    /** @throws RuntimeException what the record's constructor throws */
    static Object build(Class<?> type, Object[] values) throws ReflectiveOperationException {
        try {
            return Shape.of(type).constructor().newInstance(values);
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

    private record Found(Supplier<String> name, RecordComponent component, Object value, Exchange exchange)
            implements Place {
        @Override
        public String path() {
            return name.get();
        }

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
        collect(() -> "", input, other -> other, found);
        return found;
    }

    private static void collect(Supplier<String> prefix, Object aRecord, Exchange outer, List<Place> found)
            throws ReflectiveOperationException {
        RecordComponent[] components = Shape.of(aRecord.getClass()).components();
        Object[] values = values(aRecord);
        for (int i = 0; i < components.length; i++) {
            int index = i;
            Exchange here = other -> {
                Object[] changed = values.clone();
                changed[index] = other;
                return outer.with(build(aRecord.getClass(), changed));
            };
            RecordComponent component = components[i];
            Supplier<String> path = () -> prefix.get() + component.getName();
            found.add(new Found(path, component, values[i], here));
            if (values[i] instanceof List<?> list) {
                entries(path, component, list, here, found);
            }
        }
    }

    private static void entries(
            Supplier<String> path, RecordComponent component, List<?> list, Exchange outer, List<Place> found)
            throws ReflectiveOperationException {
        for (int i = 0; i < list.size(); i++) {
            int index = i;
            Exchange here = other -> {
                List<Object> changed = new ArrayList<>(list);
                changed.set(index, other);
                return outer.with(changed);
            };
            Supplier<String> entry = () -> path.get() + "[" + index + "]";
            if (list.get(i) instanceof Record nested) {
                collect(() -> entry.get() + ".", nested, here, found);
            } else {
                found.add(new Found(entry, component, list.get(i), here));
            }
        }
    }

    static boolean holds(Place place, Function<Class<?>, Boolean> kind) {
        return place.value() != null && kind.apply(place.value().getClass());
    }
}
