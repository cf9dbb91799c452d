package org.benchtrail.description;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Fact;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.jspecify.annotations.Nullable;

/**
 * Schemas of records as they are written and read: closed, each with what it always has, each record once under its name. What is
 * read may leave anything out; its own rules say what is missing.
 */
final class RecordSchemas {
    private static final ObjectMapper WRITER = new ObjectMapper();

    /** No text of a request is longer: a catalogue as a whole. */
    private static final int LONGEST_TEXT = 1_000_000;

    private static final int LONGEST_LIST = 10_000;

    private final Components components;
    private final boolean read;

    /** @param read whether the records are bodies of requests */
    RecordSchemas(Components components, boolean read) {
        this.components = components;
        this.read = read;
    }

    Schema list(Class<?> of) {
        return OASFactory.createSchema().addType(SchemaType.ARRAY).items(of(of));
    }

    Schema of(Type type) {
        if (type instanceof ParameterizedType generic) {
            return container((Class<?>) generic.getRawType(), generic.getActualTypeArguments());
        }
        if (!(type instanceof Class<?> plain)) {
            return OASFactory.createSchema();
        }
        if (plain == Fact.class) {
            return reference("Fact");
        }
        return plain.isRecord() ? record(plain) : simple(plain);
    }

    private static Schema reference(String name) {
        return OASFactory.createSchema().ref(name);
    }

    private Schema simple(Class<?> plain) {
        Schema schema = OASFactory.createSchema();
        if (plain.isEnum()) {
            Arrays.stream(plain.getEnumConstants())
                    .forEach(
                            one -> schema.addEnumeration(WRITER.valueToTree(one).asText()));
            return schema.addType(SchemaType.STRING);
        }
        if (plain == String.class) {
            schema.addType(SchemaType.STRING);
            return read ? schema.maxLength(LONGEST_TEXT) : schema;
        }
        if (plain == Instant.class) {
            return schema.addType(SchemaType.STRING).format("date-time");
        }
        if (plain == LocalDate.class) {
            return schema.addType(SchemaType.STRING).format("date");
        }
        if (Set.of(Duration.class, LocalTime.class, java.time.ZoneId.class).contains(plain)) {
            return schema.addType(SchemaType.STRING);
        }
        if (plain == boolean.class || plain == Boolean.class) {
            return schema.addType(SchemaType.BOOLEAN);
        }
        if (Set.of(double.class, Double.class, BigDecimal.class).contains(plain)) {
            return schema.addType(SchemaType.NUMBER);
        }
        if (Set.of(int.class, Integer.class).contains(plain)) {
            return schema.addType(SchemaType.INTEGER).format("int32");
        }
        return plain == long.class || plain == Long.class
                ? schema.addType(SchemaType.INTEGER).format("int64")
                : schema;
    }

    private Schema record(Class<?> type) {
        component(type);
        return reference(key(type));
    }

    /** The schema under its name. It is there before it is filled: a record may hold itself. */
    private Schema component(Class<?> type) {
        @Nullable
        Schema there =
                components.getSchemas() == null ? null : components.getSchemas().get(key(type));
        if (there != null) {
            return there;
        }
        Schema schema = OASFactory.createSchema().addType(SchemaType.OBJECT).additionalPropertiesBoolean(false);
        components.addSchema(key(type), schema);
        fill(schema, type);
        return schema;
    }

    private String key(Class<?> type) {
        return name(type) + (read ? "Body" : "");
    }

    /** One of several bodies, told apart by its {@code kind}. */
    Schema kind(Class<?> type, String kind) {
        component(type)
                .addProperty(
                        "kind",
                        OASFactory.createSchema().addType(SchemaType.STRING).constValue(kind))
                .addRequired("kind");
        return reference(key(type));
    }

    private void fill(Schema schema, Class<?> type) {
        for (RecordComponent component : type.getRecordComponents()) {
            if (component.getAccessor().isAnnotationPresent(JsonUnwrapped.class)) {
                fill(schema, component.getType());
                continue;
            }
            add(schema, component.getName(), nullable(component, of(component.getGenericType())));
        }
        if (!read) {
            Arrays.stream(type.getDeclaredMethods())
                    .filter(RecordSchemas::isWritten)
                    .sorted(Comparator.comparing(Method::getName))
                    .forEach(method -> add(schema, written(method.getName()), of(method.getGenericReturnType())));
        }
    }

    /** What the writer of JSON takes for a property beside the components. */
    private static boolean isWritten(Method method) {
        return Modifier.isPublic(method.getModifiers())
                && !Modifier.isStatic(method.getModifiers())
                && method.getParameterCount() == 0
                && !method.isAnnotationPresent(JsonIgnore.class)
                && method.getName().matches("(is|get)[A-Z].*");
    }

    private static String written(String method) {
        String name = method.replaceFirst("^(is|get)", "");
        return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
    }

    private void add(Schema schema, String name, Schema value) {
        schema.addProperty(name, value);
        if (!read) {
            schema.addRequired(name);
        }
    }

    private Schema nullable(RecordComponent component, Schema value) {
        boolean isPrimitive = component.getType().isPrimitive();
        if (isPrimitive || (!read && !component.getAnnotatedType().isAnnotationPresent(Nullable.class))) {
            return value;
        }
        if (value.getRef() == null && value.getEnumeration() == null) {
            return value.getType() == null ? value : value.addType(SchemaType.NULL);
        }
        return OASFactory.createSchema()
                .anyOf(List.of(value, OASFactory.createSchema().addType(SchemaType.NULL)));
    }

    private Schema container(Class<?> raw, Type[] of) {
        if (Collection.class.isAssignableFrom(raw)) {
            Schema list = OASFactory.createSchema().addType(SchemaType.ARRAY).items(of(of[0]));
            return read ? list.maxItems(LONGEST_LIST) : list;
        }
        if (Map.class.isAssignableFrom(raw)) {
            return OASFactory.createSchema().addType(SchemaType.OBJECT).additionalPropertiesSchema(of(of[1]));
        }
        return OASFactory.createSchema();
    }

    /** Of a record inside another both names. */
    static String name(Class<?> type) {
        Class<?> around = type.getEnclosingClass();
        return (around == null ? "" : name(around)) + type.getSimpleName();
    }
}
